import words from '../../../templates/stock.json' with { type: 'json' };
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import { printThin } from '../../length/thin.js';
import type { Plan } from '../../plan.js';
import type { Profile } from '../../stock/lumber/profile.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { widthOf } from '../lettering.js';
import { blockArrow, line, polygon, text } from '../primitives.js';
import { templateStations } from '../template/stations.js';

const { sheet } = words;
/** Between names along a profile, and between the words that say what a line is, mm. */
const NAMES = 600;
const LINES = 180;
const LETTERS = 5;
const SMALL = 3.5;
/** A station's mark on either edge, from the line that is milled to inward, mm. */
const MARK = 14;
/** The arrow that points to the line that is milled to, mm. */
const ARROW = { length: 13, width: 5 } as const;

/** The profiles of stringers and strips at full size, nose on the left; members with the same profile share one. */
export function profileSheets(plan: Plan): Drawing[] {
  const groups = new Map<string, Profile[]>();
  for (const profile of plan.stock?.profiles ?? []) {
    const key = JSON.stringify([profile.outline, profile.thickness, profile.member.material.name]);
    groups.set(key, [...(groups.get(key) ?? []), profile]);
  }
  return [...groups.values()].map((alike) => profileSheet(plan, alike as [Profile, ...Profile[]]));
}

function profileSheet(plan: Plan, alike: readonly [Profile, ...Profile[]]): Drawing {
  const { units } = plan.job;
  const [{ member, outline, bottom, deck, slant, thickness }] = alike;
  const names = alike.map((each) => each.member.id).join(' ');
  const [low, high] = [outline.slice(0, outline.length / 2), outline.slice(outline.length / 2).reverse()];
  const [from, to] = [low[0]![0], low.at(-1)![0]];
  const middle = (s: number) => (heightAt(bottom, s) + heightAt(deck, s)) / 2;
  const stations = [0, ...templateStations(plan.board.length, units), plan.board.length]
    .map((x) => ({ x, s: slant * x }))
    .filter(({ s }) => s > from && s < to);
  const marks = stations.flatMap(({ s }) => {
    const [under, over] = [heightAt(low, s), heightAt(high, s)];
    const reach = Math.min(MARK, (over - under) / 3);
    return [line('mark', [s, under], [s, under + reach]), line('mark', [s, over], [s, over - reach])];
  });
  const scarfs = scarfsOf(plan, alike);
  const title = say(sheet.profile, { names });
  const values = { names, material: member.material.name, thickness: printThin(thickness, units) };
  const said = [say(sheet.mill, values), say(sheet.wood, values)] as const;
  return {
    id: `profile-${member.id}`,
    title,
    name: title,
    notes: [said.join(', ')],
    legend: legendOf('profile'),
    units,
    shapes: [
      polygon('cut', outline),
      line('edge', ...deck),
      line('edge', ...bottom),
      ...marks,
      ...scarfs.flatMap(({ ends }) => ends.map((s) => line('joint', [s, heightAt(bottom, s)], [s, heightAt(deck, s)]))),
    ],
    captions: [
      endName(sheet.nose, from, 1, (s) => (heightAt(low, s) + heightAt(high, s)) / 2),
      endName(sheet.tail, to, -1, (s) => (heightAt(low, s) + heightAt(high, s)) / 2),
      ...stations.map(({ x, s }) => beside(printLength(x, units), s, heightAt(bottom, s) + LETTERS)),
      ...scarfs.map(({ member, ends: [s, end] }) =>
        beside(
          say(sheet.scarf, {
            member,
            from: printLength(s, units),
            to: printLength(end, units),
            slope: plan.job.stock!.milling.scarf,
          }),
          s,
          middle(s),
        ),
      ),
      ...alongEvery(LINES, from, to).flatMap((tried) => {
        const at = tried.filter((s) => stations.every((mark) => Math.abs(s - mark.s) > ARROW.width));
        return [
          pointing(sheet.millTo, high, 1, at),
          pointing(sheet.millTo, low, -1, at),
          named(sheet.finished.deck, deck, -1, at),
          named(sheet.finished.bottom, bottom, 1, at),
        ];
      }),
      ...alongEvery(NAMES, from, to).map((at): Caption => ({
        places: [LETTERS, SMALL].flatMap((letters) => at.map((s) => twoLines(said, s, middle(s), letters))),
      })),
    ],
  };
}

/** Every so often along a profile, places to try, mm. */
function alongEvery(every: number, from: number, to: number): number[][] {
  const steps = Array.from({ length: 10 }, (_, k) => 40 + (k * every) / 12);
  return Array.from({ length: Math.ceil((to - from) / every) }, (_, i) => steps.map((off) => from + i * every + off));
}

/** `way` 1: words to the right of the end, within the wood; outside where there is no room. */
function endName(said: string, end: number, way: 1 | -1, middle: (s: number) => number): Caption {
  const align = way === 1 ? 'left' : 'right';
  const at = (off: number, letters: number): Shape[] => [text(said, [end + way * off, middle(end)], letters, align)];
  const within = [2.5, 6, 12, 20].flatMap((off) => [at(off, LETTERS), at(off, SMALL)]);
  const outside = text(said, [end - way * 3, middle(end)], LETTERS, way === 1 ? 'right' : 'left');
  return { places: [...within, [outside]] };
}

/** An arrow from within to the line that is milled to, with words behind it; `out` 1 for the upper line. */
function pointing(said: string, edge: readonly Point[], out: 1 | -1, places: readonly number[]): Caption {
  return {
    places: places.flatMap((s) => {
      const z = heightAt(edge, s);
      const arrow = blockArrow([s, z], [0, out], ARROW.length, ARROW.width);
      const level = z - out * (ARROW.length - SMALL / 2);
      return [LETTERS, SMALL].flatMap((letters) =>
        ([1, -1] as const).map((way) => [
          arrow,
          text(said, [s + way * ARROW.width, level], letters, way === 1 ? 'left' : 'right'),
        ]),
      );
    }),
    optional: true,
  };
}

function twoLines(said: readonly [string, string], s: number, z: number, letters: number): Shape[] {
  return said.map((words, i) => text(words, [s, z + (i === 0 ? 0.75 : -0.75) * letters], letters, 'left'));
}

/** Words beside a line, within the wood and turned with the line. */
function named(said: string, edge: readonly Point[], way: 1 | -1, places: readonly number[]): Caption {
  const half = widthOf(said, SMALL) / 2;
  return {
    places: places.map((s): Shape[] => {
      const [before, after] = [heightAt(edge, s - half), heightAt(edge, s + half)];
      const angleInDegrees = (Math.atan2(after - before, 2 * half) * 180) / Math.PI;
      return [text(said, [s, (before + after) / 2 + way * SMALL], SMALL, 'centre', { angleInDegrees })];
    }),
    optional: true,
  };
}

/** Where parts of members that share a profile overlap in their scarfs, from the nose tip, mm: each place once. */
function scarfsOf({ stock }: Plan, alike: readonly Profile[]): { member: string; ends: readonly [number, number] }[] {
  const parts = (stock?.lumber?.planks ?? []).flatMap(({ leaves }) => leaves.flat().map(({ laid }) => laid.part));
  const places = new Map<string, { members: string[]; ends: readonly [number, number] }>();
  for (const { id } of alike.map(({ member }) => member)) {
    const its = parts
      .filter(({ name }) => name.startsWith(`${id} `))
      .flatMap(({ along }) => (along ? [along] : []))
      .sort((a, b) => a[0] - b[0]);
    its.slice(1).forEach(([from], i) => {
      const ends = [from, its[i]![1]] as const;
      const place = places.get(String(ends)) ?? { members: [], ends };
      place.members.push(id);
      places.set(String(ends), place);
    });
  }
  return [...places.values()].map(({ members, ends }) => ({ member: members.join(' '), ends }));
}

function beside(words: string, s: number, z: number): Caption {
  return { places: [[text(words, [s + 2, z], 3.5, 'left')], [text(words, [s - 2, z], 3.5, 'right')]] };
}

/** Height of a line that runs from nose to tail, level beyond its ends. */
function heightAt(points: readonly Point[], s: number): number {
  const next = points.findIndex(([at]) => at >= s);
  if (next <= 0) return (next < 0 ? points.at(-1)! : points[0]!)[1];
  const [[s0, z0], [s1, z1]] = [points[next - 1]!, points[next]!];
  return z0 + ((s - s0) / (s1 - s0)) * (z1 - z0);
}

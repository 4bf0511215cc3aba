import words from '../../../templates/stock.json' with { type: 'json' };
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import type { Profile } from '../../stock/lumber/profile.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing } from '../drawing.js';
import { line, polygon, text } from '../primitives.js';

const { sheet } = words;
/** Between station marks, and between names along a profile, mm. */
const STATIONS = 250;
const NAMES = 600;
const LETTERS = 5;

/** The profiles of stringers and strips at full size, nose on the left; members with the same profile share one. */
export function profileSheets(plan: Plan): Drawing[] {
  const { job } = plan;
  const { units } = job;
  const groups = new Map<string, Profile[]>();
  for (const profile of plan.stock?.profiles ?? []) {
    const key = JSON.stringify([profile.outline, profile.thickness, profile.member.material.name]);
    groups.set(key, [...(groups.get(key) ?? []), profile]);
  }
  return [...groups.values()].map((alike) => {
    const [{ member, outline, bottom, deck, thickness }] = alike as [Profile, ...Profile[]];
    const names = alike.map((each) => each.member.id).join(' ');
    const [from, to] = [outline[0]![0], outline[outline.length / 2 - 1]![0]];
    const at = Array.from({ length: Math.floor(to / STATIONS) + 1 }, (_, i) => i * STATIONS).filter((s) => s > from);
    const middle = (s: number) => (heightAt(bottom, s) + heightAt(deck, s)) / 2;
    const scarfs = scarfsOf(plan, alike);
    const title = say(sheet.profile, { names });
    const mill = say(sheet.mill, {
      names,
      material: member.material.name,
      thickness: printLength(thickness, units),
    });
    return {
      id: `profile-${member.id}`,
      title,
      name: title,
      notes: [mill, sheet.profileNote],
      shapes: [
        polygon('outline', outline),
        line('edge', ...deck),
        line('edge', ...bottom),
        ...at.map((s) => line('mark', [s, heightAt(bottom, s)], [s, heightAt(deck, s)])),
        ...scarfs.flatMap(({ ends }) =>
          ends.map((s) => line('joint', [s, heightAt(bottom, s)], [s, heightAt(deck, s)])),
        ),
      ],
      captions: [
        ...at.map((s) => beside(printLength(s, units), s, heightAt(bottom, s) + LETTERS)),
        ...scarfs.map(({ member, ends: [s, to] }) =>
          beside(
            say(sheet.scarf, {
              member,
              from: printLength(s, units),
              to: printLength(to, units),
              slope: job.stock!.milling.scarf,
            }),
            s,
            middle(s),
          ),
        ),
        ...Array.from({ length: Math.ceil((to - from) / NAMES) }, (_, i): Caption => {
          const s = from + 60 + i * NAMES;
          return { places: [0, 40, 80, 120].map((off) => [text(mill, [s + off, middle(s + off)], LETTERS, 'left')]) };
        }),
        { places: [[text(sheet.nose, [from - 3, middle(from)], LETTERS, 'right')]] },
        { places: [[text(sheet.tail, [to + 3, middle(to)], LETTERS, 'left')]] },
      ],
    };
  });
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

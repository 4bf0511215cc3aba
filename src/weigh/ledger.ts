import type { Material } from '../job/spec/material.js';
import type { Block } from '../block/block.js';
import type { FinSpec, GlassSpec } from '../job/spec/finish.js';
import { fittedWeight, type BuiltFin } from '../fin/finOf.js';
import type { Job } from '../job/job.js';
import { isFrom, type Stage } from '../job/spec/stage.js';
import type { Layup } from '../layup/layup.js';
import type { Bare } from './bare.js';
import { boxBlank } from './blank.js';
import { type Moments, NO_MOMENTS, pointMoments, sumOf, times } from './moments.js';
import type { ChamberCut } from './cuts.js';
import { finVolume } from './fin.js';
import { densitySpread, type Figure, USUAL } from './usual.js';
import { USUAL_GLASS } from '../job/usual-glass.js';

/**
 * Something nobody knows before it is weighed: a density (kg/m³), what a job takes by area (g/m²), a share of what was
 * meant.
 */
export interface Unknown extends Figure {
  /** `material:redwood`, `jointGlue`, `wetOut`, … */
  readonly id: string;
  readonly unit: 'kg/m³' | 'g/m²' | 'mm' | 'share';
}

/**
 * One unknown's part in the weight: `moments` times the unknown is kg, from one stage on and, where given, only before
 * another.
 */
export interface Entry {
  readonly unknown: string;
  readonly moments: Moments;
  readonly from: Stage;
  readonly before?: Stage;
}

/**
 * Everything that is put on and taken off, so that a weight at any stage is a sum of unknowns times what the drawing
 * says.
 */
export interface Ledger {
  readonly unknowns: readonly Unknown[];
  readonly entries: readonly Entry[];
}

/** Litres times kg/m³, and m² times g/m², are grams. */
const GRAMS = 1 / 1000;

export function ledgerOf(
  bare: Bare,
  built: readonly BuiltFin[],
  layup: Layup,
  cuts: readonly ChamberCut[],
  blocks: readonly Block[],
  job: Pick<Job, 'fill' | 'glass' | 'fins' | 'fittings' | 'dots'>,
): Ledger {
  const glass = job.glass ?? USUAL_GLASS;
  const entries = [
    ...boardEntries(bare, layup),
    ...blankEntries(bare, layup, job),
    ...chamberEntries(cuts, blocks, job.fill),
    ...glueEntries(bare, cuts),
    ...glassEntries(bare, glass),
    ...fittingEntries(job, built),
  ];
  const materials = [...layup.members.map((m) => m.material), job.fill];
  return { unknowns: unknownsOf(materials), entries };
}

function unknownsOf(materials: readonly Material[]): Unknown[] {
  const once = new Map(materials.map((material) => [material.name, material]));
  const units = {
    blankOver: 'mm',
    leftOn: 'mm',
    routed: 'mm',
    jointGlue: 'g/m²',
    blockGlue: 'g/m²',
    sanded: 'g/m²',
  } as const;
  const ids = Object.keys(USUAL) as (keyof typeof USUAL)[];
  return [
    ...[...once.values()].map((material): Unknown => ({
      id: densityOf(material),
      unit: 'kg/m³',
      value: material.density,
      spread: densitySpread(material),
    })),
    ...ids.map((id): Unknown => ({ id, unit: id in units ? units[id as keyof typeof units] : 'share', ...USUAL[id] })),
  ];
}

function densityOf(material: Material): string {
  return `material:${material.name}`;
}

/**
 * The solid board as shaped. What the shaper left on is taken to weigh as the members do on the whole, by their usual
 * densities.
 */
function boardEntries({ members, skin }: Bare, layup: Layup): Entry[] {
  const densities = layup.members.map(({ material }) => material.density);
  const volume = sumOf(members).amount;
  const density = sumOf(members.map((moments, m) => times(moments, densities[m]!))).amount / volume;
  return [
    ...layup.members.flatMap(({ material }, m): Entry[] => [
      { unknown: densityOf(material), moments: times(members[m]!, GRAMS), from: 'shaped' },
    ]),
    {
      unknown: 'leftOn',
      moments: times(sumOf([skin.deck, skin.bottom]), density * GRAMS),
      from: 'shaped',
      before: 'sealed',
    },
  ];
}

/**
 * The blank: members as they come from the stock that the job names; of the others a box where the job gives its
 * thickness, else strips sawn to the rocker, with something left over all around.
 */
function blankEntries({ blank, length }: Bare, layup: Layup, { dots }: Pick<Job, 'dots'>): Entry[] {
  const box = dots?.blank.thickness;
  const supposed = box === undefined ? blank.members : boxBlank(layup, length, blank, box, dots!.blank);
  const over = layup.members.map(({ material }, m) =>
    box === undefined && !blank.fromStock?.[m] ? times(blank.perMm[m]!, material.density * GRAMS) : NO_MOMENTS,
  );
  return [
    ...layup.members.map(({ material }, m): Entry => ({
      unknown: densityOf(material),
      moments: times(blank.fromStock?.[m] ?? supposed[m]!, GRAMS),
      from: 'blank',
      before: 'shaped',
    })),
    { unknown: 'blankOver', moments: sumOf(over), from: 'blank', before: 'shaped' },
  ];
}

function chamberEntries(cuts: readonly ChamberCut[], blocks: readonly Block[], fill: Material): Entry[] {
  const taken = new Map<string, Moments[]>();
  const densities = new Map<string, number>();
  for (const { members } of cuts) {
    for (const { member, moments } of members) {
      const name = densityOf(member.material);
      densities.set(name, member.material.density);
      taken.set(name, [...(taken.get(name) ?? []), moments]);
    }
  }
  const removed = sumOf([...taken].map(([name, parts]) => times(sumOf(parts), densities.get(name)!)));
  const volume = sumOf(cuts.map(({ whole }) => whole)).amount || 1;
  const walls = times(wallsOf(cuts), (removed.amount / volume) * GRAMS);
  const byId = new Map(cuts.map((cut) => [cut.id, cut]));
  const put = sumOf(
    blocks.map(({ id, volume }) => {
      const whole = byId.get(id)?.whole ?? NO_MOMENTS;
      return times(whole, volume / (whole.amount || 1));
    }),
  );
  return [
    ...[...taken].map(([unknown, parts]): Entry => ({
      unknown,
      moments: times(sumOf(parts), -GRAMS),
      from: 'chambered',
    })),
    { unknown: 'routed', moments: times(walls, -1), from: 'chambered' },
    { unknown: densityOf(fill), moments: times(put, GRAMS), from: 'filled' },
  ];
}

/**
 * Bonded joints are glued with the blank; dotted ones, over the ends of the blocks too, when the pieces come together
 * again.
 */
function glueEntries({ bondedJoints, dottedJoints }: Bare, cuts: readonly ChamberCut[]): Entry[] {
  return [
    { unknown: 'jointGlue', moments: times(bondedJoints, GRAMS), from: 'blank' },
    { unknown: 'jointGlue', moments: times(dottedJoints, GRAMS), from: 'filled' },
    { unknown: 'blockGlue', moments: times(wallsOf(cuts), GRAMS), from: 'filled' },
  ];
}

/** The walls of all chambers, m², lying as the chambers do. */
function wallsOf(cuts: readonly ChamberCut[]): Moments {
  return sumOf(cuts.map(({ whole, walls }) => times(whole, walls / (whole.amount || 1))));
}

function glassEntries({ skin: { deck, bottom, apexLine } }: Bare, glass: GlassSpec): Entry[] {
  const both = sumOf([deck, bottom]);
  const lap = times(apexLine, glass.lap / 1000);
  const side = (area: Moments, layers: readonly number[]) =>
    times(sumOf([area, lap]), layers.reduce((a, b) => a + b, 0) * GRAMS);
  const cloth = sumOf([side(deck, glass.deck), side(bottom, glass.bottom)]);
  const reinforcing = times(both, glass.hotCoatCloth * GRAMS);
  return [
    { unknown: 'sealer', moments: times(both, glass.sealer * GRAMS), from: 'sealed' },
    { unknown: 'cloth', moments: cloth, from: 'laminated' },
    { unknown: 'wetOut', moments: times(cloth, glass.resin), from: 'laminated' },
    { unknown: 'cloth', moments: reinforcing, from: 'hot-coated' },
    { unknown: 'wetOut', moments: times(reinforcing, glass.resin), from: 'hot-coated' },
    { unknown: 'hotCoat', moments: times(both, glass.hotCoat * GRAMS), from: 'hot-coated' },
    { unknown: 'sanded', moments: times(both, -GRAMS), from: 'finished' },
  ];
}

/** A fin that is built weighs what it is built of; another what its measures and its density say. */
function fittingEntries(
  { fins = [], fittings = [] }: Pick<Job, 'fins' | 'fittings'>,
  built: readonly BuiltFin[],
): Entry[] {
  const fin = (each: FinSpec, i: number) => {
    const made = built.find(({ index }) => index === i);
    if (!made) return pointMoments(each.weight ?? finVolume(each) * each.density * GRAMS, each.x);
    const { weight, x } = fittedWeight(made);
    return pointMoments(weight, x, each.build!.stands.away);
  };
  return [
    { unknown: 'fins', moments: sumOf(fins.map(fin)), from: 'fitted' },
    { unknown: 'fittings', moments: sumOf(fittings.map(({ weight, x }) => pointMoments(weight, x))), from: 'fitted' },
  ];
}

/** What each unknown counts for at a stage, kg and moments a unit of it, in the order of `unknowns`. */
export function partsAt({ unknowns, entries }: Ledger, stage: Stage): Moments[] {
  const there = entries.filter(({ from, before }) => isFrom(stage, from) && !(before && isFrom(stage, before)));
  return unknowns.map(({ id }) => sumOf(there.filter((e) => e.unknown === id).map((e) => e.moments)));
}

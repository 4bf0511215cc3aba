import { printArealWeight } from '../../length/areal.js';
import { printDensity } from '../../length/density.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { printWeight } from '../../length/weight.js';
import { widestHalf } from '../half-width.js';
import type { Job, Member } from '../job.js';
import type { FinBuildSpec } from '../spec/fin.js';
import type { FinSpec } from '../spec/finish.js';
import type { Path, Say } from '../mistake/say.js';

type Print = (value: number, units: Units) => string;

/** A value of a job and between what boards usually have it. */
interface Usual {
  readonly path: Path;
  readonly value: number | undefined;
  readonly from: number;
  readonly to: number;
  readonly print: Print;
}

const share: Print = (value) => `${Number((100 * value).toFixed(1))} %`;
const count: Print = (value) => `${value}`;
const ratio: Print = (value) => `${Number(value.toFixed(1))}`;

/**
 * Tells single values that hardly any board has; what cannot be at all is refused by the bounds of its key. The job is
 * planned as written.
 *
 * @param areTablesSure whether the board's tables hold nothing doubtful: only then its proportions say more
 */
export function unusual(job: Job, areTablesSure: boolean, say: Say): void {
  for (const { path, value, from, to, print } of usualOf(job, areTablesSure)) {
    if (value === undefined || Number.isNaN(value) || (value >= from && value <= to)) continue;
    const { units } = job;
    say.warning(
      path,
      `${print(value, units)} is far from what boards have, ${print(from, units)} to ${print(to, units)}`,
      'read it again; until then it is planned as written',
    );
  }
}

/**
 * All lengths mm, weights kg, densities kg/m³, by area g/m². The ranges are wide: they are to catch a digit or a unit
 * gone wrong, not a builder with another taste. Common practice, no source, every one.
 */
function usualOf(job: Job, areTablesSure: boolean): Usual[] {
  const { board, chambers: c, dots, routing, blocks, glass, fill } = job;
  const length = (path: Path, value: number | undefined, from: number, to: number): Usual => ({
    path,
    value,
    from,
    to,
    print: printLength,
  });
  const widest = Math.max(...[board.right, board.left ?? board.right].map(widestHalf));
  return [
    ...(areTablesSure ? proportions(job, widest) : []),
    ...members(job, widest),
    length(['chambers', 'pitch'], c.pitch, 60, 1300),
    length(['chambers', 'web'], c.web, 5, 120),
    length(['chambers', 'deckSkin'], c.deckSkin, 3, 50),
    length(['chambers', 'bottomSkin'], c.bottomSkin, 3, 50),
    length(['chambers', 'railWall'], c.railWall, 4, 120),
    length(['chambers', 'floor'], c.floor, 2, 40),
    length(['chambers', 'tolerance'], c.tolerance, 0, 6),
    length(['chambers', 'cutter'], c.cutterDiameter, 4, 32),
    length(['chambers', 'smallest', 'length'], c.smallest.length, 15, 400),
    length(['chambers', 'smallest', 'height'], c.smallest.height, 8, 120),
    length(['chambers', 'smallest', 'depth'], c.smallest.depth, 8, 200),
    length(['chambers', 'solidNose'], c.solidNose || undefined, 10, board.length / 4),
    length(['chambers', 'solidTail'], c.solidTail || undefined, 10, board.length / 4),
    length(['chambers', 'datum'], c.datum || undefined, 20, board.length / 2),
    length(['dots', 'size'], dots.diameter, 5, 50),
    length(['dots', 'margin'], dots.margin, 3, 60),
    length(['dots', 'clearance'], dots.clearance, 1, 60),
    length(['dots', 'spacing'], dots.spacing, 60, 1500),
    length(['dots', 'nearEnd'], dots.nearEnd, 20, 1000),
    length(['dots', 'blank', 'nose'], dots.blank.nose, 0, 300),
    length(['dots', 'blank', 'tail'], dots.blank.tail, 0, 300),
    length(['dots', 'blank', 'below'], dots.blank.below, 0, 200),
    length(['routing', 'bush'], routing.bush, 6, 55),
    length(['routing', 'guideStock'], routing.guideStock, 3, 40),
    length(['routing', 'pass'], routing.passDepth, 2, 60),
    { path: ['fill'], value: fill.density, from: 6, to: 80, print: printDensity },
    length(['blocks', 'fit'], blocks.fit, -4, 8),
    length(['blocks', 'kerf'], blocks.kerf, 0, 6.5),
    length(['blocks', 'trim'], blocks.trim, 0, 80),
    { path: ['blocks', 'glue', 'spread'], value: blocks.glue.spread, from: 20, to: 800, print: printArealWeight },
    { path: ['blocks', 'glue', 'loss'], value: blocks.glue.loss, from: 0, to: 1, print: share },
    {
      path: ['blocks', 'glue', 'openTime'],
      value: blocks.glue.openTime,
      from: 2,
      to: 240,
      print: (v) => `${v} minutes`,
    },
    {
      path: ['blocks', 'glue', 'minutesPerBlock'],
      value: blocks.glue.minutesPerBlock,
      from: 0.3,
      to: 60,
      print: (v) => `${v} minutes`,
    },
    length(['blocks', 'glue', 'clampSpacing'], blocks.glue.clampSpacing, 50, 700),
    ...blocks.stock.flatMap((sheet, i) => [
      length(['blocks', 'stock', i, 'length'], sheet.length, 150, 4000),
      length(['blocks', 'stock', i, 'width'], sheet.width, 50, 2500),
      length(['blocks', 'stock', i, 'thickness'], sheet.thickness, 10, 650),
    ]),
    ...(['deck', 'bottom'] as const).flatMap((side): Usual[] => [
      {
        path: ['glass', side],
        value: glass?.[side].length,
        from: 0,
        to: 8,
        print: (v) => `${count(v, job.units)} layers`,
      },
      ...(glass?.[side] ?? []).map((cloth, i): Usual => ({
        path: ['glass', side, i],
        value: cloth,
        from: 40,
        to: 700,
        print: printArealWeight,
      })),
    ]),
    length(['glass', 'lap'], glass?.lap, 0, 150),
    { path: ['glass', 'resin'], value: glass?.resin, from: 0.5, to: 2, print: share },
    { path: ['glass', 'sealer'], value: glass?.sealer || undefined, from: 30, to: 500, print: printArealWeight },
    { path: ['glass', 'hotCoat'], value: glass?.hotCoat || undefined, from: 60, to: 700, print: printArealWeight },
    ...(job.fins ?? []).flatMap((fin, i) => [
      length(['fins', i, 'base'], fin.base, 30, 450),
      length(['fins', i, 'depth'], fin.depth, 30, 450),
      length(['fins', i, 'tip'], fin.tip, 0, 1.2 * fin.base),
      length(['fins', i, 'thick'], fin.thickness, 2, 40),
      length(['fins', i, 'tipThick'], fin.tipThickness, 0, fin.thickness),
      ...(fin.build ? builtFin(['fins', i, 'build'], fin, fin.build, length) : []),
    ]),
    ...(job.fittings ?? []).map(({ weight }, i): Usual => ({
      path: ['fittings', i, 'weight'],
      value: weight,
      from: 0.005,
      to: 4,
      print: printWeight,
    })),
    { path: ['rider'], value: job.rider, from: 25, to: 250, print: printWeight },
    { path: ['target', 'weight'], value: job.target?.weight, from: 1.5, to: 70, print: printWeight },
    ...(job.weighings ?? []).map(({ weight }, i): Usual => ({
      path: ['weighings', i, 'weight'],
      value: weight,
      from: 0.8,
      to: 90,
      print: printWeight,
    })),
    ...(job.weighings ?? []).map(({ scale, weight }, i): Usual => ({
      path: ['weighings', i, 'scale'],
      value: scale,
      from: 0,
      to: weight / 5,
      print: printWeight,
    })),
    ...job.keepOuts.flatMap((keepOut) => keepOutSizes(keepOut, board.length, widest)),
  ];
}

/** Where both edges were drawn, the outline as a whole says how far it is raked. */
function builtFin(
  path: Path,
  { depth }: FinSpec,
  { outline: { rake, leading, trailing }, over, leave, pass, tab, fillet }: FinBuildSpec,
  length: (path: Path, value: number | undefined, from: number, to: number) => Usual,
): Usual[] {
  const isDrawn = typeof leading === 'object' && typeof trailing === 'object';
  return [
    length([...path, 'outline', ...(isDrawn ? [] : ['rake'])], rake, -0.6 * depth, 1.5 * depth),
    length([...path, 'over'], over, 2, 30),
    length([...path, 'leave'], leave, 0, 2),
    length([...path, 'pass'], pass, 0.05, 1.5),
    length([...path, 'tab', 'depth'], tab?.depth, 8, 100),
    length([...path, 'fillet', 'radius'], fillet?.radius, 3, 30),
    length([...path, 'fillet', 'reach'], fillet?.reach, 5, 80),
  ];
}

function proportions({ board, units }: Job, widest: number): Usual[] {
  const thickest = Math.max(...board.profile.map(({ thickness }) => thickness));
  return [
    {
      path: ['board', 'length'],
      value: board.length / (2 * widest),
      from: 2.2,
      to: 13,
      print: (v) => `${ratio(v, units)} times the width`,
    },
    {
      path: ['board', 'stations'],
      value: thickest / (2 * widest),
      from: 0.04,
      to: 0.4,
      print: (v) => `${share(v, units)} of the width in thickness`,
    },
  ];
}

function members({ glueUp }: Pick<Job, 'glueUp'>, widest: number): Usual[] {
  const of = (path: Path, member: Member | undefined): Usual[] => {
    if (!member) return [];
    const { thickness, material, kind } = member;
    const wood = kind === 'stringer';
    const [from, to] = wood ? [1.2, 80] : [1.5, 0.8 * widest];
    const each = typeof thickness === 'object' ? [['nose'], ['tail']] : [[]];
    const values = typeof thickness === 'object' ? [thickness.nose, thickness.tail] : [thickness];
    return [
      ...values.map((value, i): Usual => ({
        path: [...path, 'thickness', ...each[i]!],
        value,
        from,
        to,
        print: printLength,
      })),
      {
        path: [...path, kind],
        value: material.density,
        from: wood ? 60 : 8,
        to: wood ? 1100 : 150,
        print: printDensity,
      },
    ];
  };
  return [
    ...of(['glueUp', 'centre'], glueUp.centre),
    ...glueUp.right.flatMap((member, i) => of(['glueUp', 'members', i], member)),
    ...(glueUp.left ?? []).flatMap((member, i) => of(['glueUp', 'left', i], member)),
  ];
}

/** A keep-out for both sides counts twice in the job, so that it is told by its name. */
function keepOutSizes(keepOut: Job['keepOuts'][number], length: number, widest: number): Usual[] {
  const path: Path = ['keepOuts'];
  const print: Print = (value, units) => `a size of ${printLength(value, units)} (${keepOut.name})`;
  if (keepOut.kind === 'disc') return [{ path, value: 2 * keepOut.radius, from: 3, to: widest, print }];
  if (keepOut.kind === 'polygon') return [];
  return [
    { path, value: keepOut.length, from: 12, to: length / 3, print },
    { path, value: keepOut.width, from: 3, to: 1.5 * widest, print },
  ];
}

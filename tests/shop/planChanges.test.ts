import { pathPoints } from '../../src/contour/chords.js';
import type { CrossSection, ManifoldToplevel } from 'manifold-3d';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { trackedBlocks } from '../../src/cli/trackedBlocks.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { refitsOf } from '../../src/shop/fit/refits.js';
import { FIT_TOLERANCE, TURNS, type Turn } from '../../src/shop/fit/shape.js';
import { NOTHING_YET, stateAfter } from '../../src/shop/log/state.js';
import { kernel } from '../oracle/kernel.js';
import { event, numbered, step } from './rescueBoard.js';

/**
 * What a changed plan means for blocks that are cut, against solids of the kernel manifold-3d: the block as it was made
 * (its old chamber moved by the old fit, by the kernel's own offset) inside today's chamber by today's fit. The kernel
 * is asked with a little less and a little more than the tolerance; between the two either verdict is right.
 */

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
/**
 * How far the kernel's tolerance is from ours on either side, mm: its circles, our chords, the grid of the comparison.
 */
const DOUBT = 0.12;
/** What the kernel may find standing out, as a layer over the whole of a block's faces, mm. */
const LAYER = 0.004;

function planned(sample: string, [from, to]: readonly [string, string] = ['', '']): Plan {
  const file = join(samples, sample);
  const text = readFileSync(file, 'utf8');
  expect(text).toContain(from);
  const { job, findings } = readJob(text.replace(from, to), file, (name) =>
    readFileSync(join(dirname(file), name), 'utf8'),
  );
  expect(job, JSON.stringify(findings)).toBeDefined();
  return planOf(job!);
}

/** A block as an outline and a thickness, with what the kernel holds of it. */
interface Solid {
  readonly section: CrossSection;
  readonly thickness: number;
  readonly area: number;
}

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

/** A block from its chamber's contour alone. */
function solidOf({ chambers, job }: Plan, index: number): Solid {
  const { contour, depth } = chambers[index]!;
  const { fit, corners } = job.blocks;
  const points = pathPoints(contour, true, 0.005);
  const pairs = Array.from({ length: points.length / 2 - 1 }, (_, i): [number, number] => [
    points[2 * i]!,
    points[2 * i + 1]!,
  ]);
  const chamber = new wasm.CrossSection([pairs]);
  const radius = job.chambers.cutterDiameter / 2;
  // Square corners: the eased ones shrunk to a point, and grown again with mitres.
  const section =
    corners === 'square'
      ? chamber.offset(-radius, 'Round', 2, 256).offset(radius + fit, 'Miter', 10)
      : fit < 0
        ? chamber.offset(fit, 'Miter', 10)
        : chamber.offset(fit, 'Round', 2, 256);
  return { section, thickness: depth[1] - depth[0], area: section.area() };
}

const turn = ({ section, ...rest }: Solid, how: Turn | undefined): Solid => ({
  ...rest,
  section: how === undefined ? section : section.scale([how === 'over' ? 1 : -1, how === 'round' ? 1 : -1]),
});

/** Whether one solid can be shifted into the other grown by `spare` everywhere. */
function isInside(small: Solid, large: Solid, spare: number): boolean {
  if (small.thickness > large.thickness + spare) return false;
  const room = large.section.offset(spare, 'Miter', 4);
  const [a, b] = [small.section.bounds(), room.bounds()];
  const play = [0, 1].map((axis) => b.max[axis]! - b.min[axis]! - (a.max[axis]! - a.min[axis]!));
  if (Math.min(...play) < 0) return false;
  const out = (x: number, y: number) =>
    small.section
      .translate([b.min[0] - a.min[0] + x * play[0]!, b.min[1] - a.min[1] + y * play[1]!])
      .subtract(room)
      .area();
  // Down a valley from the best of nine places, in ever smaller steps.
  let [best, x, y] = [Infinity, 0.5, 0.5];
  const look = (u: number, v: number) => {
    if (u < 0 || u > 1 || v < 0 || v > 1) return false;
    const stands = out(u, v);
    if (stands >= best) return false;
    [best, x, y] = [stands, u, v];
    return true;
  };
  for (const u of [0.5, 0, 1]) for (const v of [0.5, 0, 1]) look(u, v);
  const allowed = LAYER * 4 * Math.sqrt(small.area);
  for (let stride = 0.25; stride > 0.002 && best > allowed; stride /= 2) {
    while (
      best > allowed &&
      [
        [stride, 0],
        [-stride, 0],
        [0, stride],
        [0, -stride],
        [stride, stride],
        [-stride, -stride],
        [stride, -stride],
        [-stride, stride],
      ].some(([du, dv]) => look(x + du!, y + dv!))
    );
  }
  if (best > allowed) return false;
  // The solids themselves, at that place.
  const placed = small.section.translate([b.min[0] - a.min[0] + x * play[0]!, b.min[1] - a.min[1] + y * play[1]!]);
  const block = placed.extrude(small.thickness);
  const hollow = room.extrude(large.thickness + 2 * spare).translate([0, 0, -spare]);
  const stands = block.subtract(hollow);
  const inside = stands.volume() <= allowed * small.thickness;
  for (const solid of [block, hollow, stands]) solid.delete();
  return inside;
}

const suits = (made: Solid, asked: Solid, spare: number) =>
  isInside(made, asked, spare) && isInside(asked, made, spare);

/** What may be said of a block, by the kernel. */
function verdicts(made: Solid, asked: Solid): readonly string[] {
  const said = (spare: number): string => {
    if (suits(made, asked, spare)) return 'fits';
    const turns = TURNS.map((how) => turn(made, how));
    if (!turns.some((each) => isInside(asked, each, spare))) return 'new';
    return turns.some((each) => suits(each, asked, spare)) ? 'turn' : 'trim';
  };
  return [said(FIT_TOLERANCE - DOUBT), said(FIT_TOLERANCE + DOUBT)];
}

const SHORT = 'fell-short.yaml';
const PRONE = 'mere-prone.yaml';
const FILL = 'fill: {name: light offcuts, density: 12 kg/m3}';
const changes: readonly (readonly [string, string, string])[] = [
  [SHORT, 'web: 18', 'web: 20'],
  [SHORT, 'web: 18', 'web: 17.4'],
  [SHORT, 'deckSkin: 9', 'deckSkin: 10'],
  [SHORT, 'deckSkin: 9', 'deckSkin: 8'],
  [SHORT, 'bottomSkin: 8', 'bottomSkin: 8.3'],
  [SHORT, 'railWall: 18', 'railWall: 22'],
  [SHORT, 'railWall: 18', 'railWall: 15'],
  [SHORT, 'floor: 5', 'floor: 7'],
  [SHORT, 'tolerance: 1\n', 'tolerance: 0.8\n'],
  [SHORT, 'cutter: 10', 'cutter: 14'],
  [SHORT, 'pitch: 160', 'pitch: 150'],
  [SHORT, 'pitch: 160', 'pitch: 175'],
  [SHORT, 'solidNose: 180', 'solidNose: 240'],
  [SHORT, 'stagger: 0.5', 'stagger: 0'],
  [SHORT, FILL, `${FILL}\nblocks: {fit: -1.6}`],
  [SHORT, FILL, `${FILL}\nblocks: {fit: 0.8}`],
  [SHORT, FILL, `${FILL}\nblocks: {corners: square}`],
  [PRONE, 'fit: -1', 'fit: 0.6'],
  [PRONE, 'corners: square', 'corners: eased'],
  [PRONE, 'railWall: 22', 'railWall: 25'],
];

describe('what a changed plan means for blocks that are cut, against manifold-3d', () => {
  const earlier = new Map<string, Plan>();
  const told = new Set<string>();

  it.each(changes)('%s: %j becomes %j', (sample, from, to) => {
    const old = earlier.get(sample) ?? planned(sample);
    earlier.set(sample, old);
    const now = planned(sample, [from, to]);
    const [made, asked] = [trackedBlocks(old), trackedBlocks(now)];
    const cut = made.map(({ id }, i) => event({ seq: i + 1, plan: 1, what: step(id, 'cut') }));
    const refits = refitsOf(asked, stateAfter(NOTHING_YET, numbered(cut)), [
      { number: 1, blocks: made },
      { number: 2, blocks: asked },
    ]);
    for (const [i, { id }] of made.entries()) {
      const place = asked.findIndex((one) => one.id === id);
      const refit = refits.get(id);
      const kind = refit?.kind ?? 'fits';
      told.add(kind);
      const mine = solidOf(old, i);
      if (place < 0) expect(kind, id).toBe('unused');
      else expect(verdicts(mine, solidOf(now, place)), id).toContain(kind);
      if (refit?.kind !== 'new' && refit?.kind !== 'unused') continue;
      if (!refit.elsewhere || refit.elsewhere === 'none') continue;
      const { place: other, turned, trim } = refit.elsewhere;
      const there = solidOf(
        now,
        asked.findIndex((one) => one.id === other),
      );
      const spare = FIT_TOLERANCE + DOUBT;
      expect(isInside(there, turn(mine, turned), spare), `${id} as ${other}`).toBe(true);
      if (!trim) expect(isInside(turn(mine, turned), there, spare), `${id} as ${other}`).toBe(true);
    }
  });

  it('every verdict was among them', () => {
    expect([...told].sort()).toEqual(expect.arrayContaining(['fits', 'new', 'trim', 'unused']));
  });

  it('another foam is told, whatever its size', () => {
    const old = earlier.get(SHORT) ?? planned(SHORT);
    const made = trackedBlocks(old);
    const asked = made.map((block) => ({ ...block, made: { ...block.made!, foam: { name: 'eps-12', density: 12 } } }));
    const cut = made.map(({ id }, i) => event({ seq: i + 1, plan: 1, what: step(id, 'cut') }));
    const refits = refitsOf(asked, stateAfter(NOTHING_YET, numbered(cut)), [{ number: 1, blocks: made }]);
    expect([...refits.values()].map(({ kind }) => kind)).toEqual(made.map(() => 'other-foam'));
  });
});

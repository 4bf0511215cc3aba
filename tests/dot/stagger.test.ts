import { expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { carvingIn, drawnPlaces, shapesOf } from '../../src/chamber/chambers.js';
import { jointFaces } from '../../src/dot/jointFace.js';
import { plannedJoints } from '../../src/dot/planned.js';
import { restaggered } from '../../src/dot/stagger.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { sampleJob } from '../samples.js';

const asked = sampleJob('mere-prone');
const job = { ...asked, dots: { ...asked.dots, may: ['trim', 'split', 'stagger'] as const } };
const board = boardOf(job.board);
const trees = patchTreesOf(board.mesh);
const laid = layupOf(job.glueUp, board.length);

type Toll = [excess: number, lost: number, shifted: number];

/** What one choice of parities costs: gaps too wide, mm; volume not drawn and lost to dots, mm³; rows shifted. */
function tollOf(parities: readonly (0 | 1)[]): Toll {
  const layup = { ...laid, rows: laid.rows.map((row, i) => ({ ...row, parity: parities[i]! })) };
  const rows = drawnPlaces(carvingIn(board, layup, trees, job));
  const volume = rows.reduce((sum, row) => sum + shapesOf(row).reduce((all, each) => all + each.volume, 0), 0);
  let [excess, lost] = [0, -1e6 * volume];
  for (const face of jointFaces(layup)) {
    const beside = rows.filter(({ carving }) => face.rows.some((at) => at.row.id === carving.row.id));
    const [planned] = plannedJoints(board, [face], trees, beside.flatMap(shapesOf), job);
    excess += planned!.notes.reduce((sum, { has = 0, needs = 0 }) => sum + Math.max(0, has - needs), 0);
    lost += planned!.lost;
  }
  return [excess, lost, parities.filter((parity, i) => parity !== laid.rows[i]!.parity).length];
}

// Brute force: every choice of parities.
test('rows are shifted so that no other choice of which are shifted costs less', () => {
  const { rows } = laid;
  const { layup, notes } = restaggered(board, laid, trees, job);
  const chosen = layup.rows.map(({ parity }) => parity);
  const own = tollOf(chosen);
  for (let choice = 0; choice < 2 ** rows.length; choice++) {
    const parities = rows.map((_, i) => ((choice >> i) & 1) as 0 | 1);
    const toll = tollOf(parities);
    // To a millimetre and ten cubic ones: every volume is rounded by itself.
    const [excess, lost] = [toll[0] - own[0], toll[1] - own[1]];
    expect(excess, parities.join()).toBeGreaterThan(-1e-3 * rows.length);
    if (Math.abs(excess) < 1e-3 * rows.length) {
      expect(lost, parities.join()).toBeGreaterThan(-10);
      if (Math.abs(lost) < 10) expect(toll[2], parities.join()).toBeGreaterThanOrEqual(own[2]);
    }
  }
  const moved = layup.rows.filter((row, i) => row.parity !== rows[i]!.parity).map(({ id }) => id);
  expect(notes).toEqual(moved.map((id) => ({ kind: 'shifted', where: id, row: id, why: 'stagger', by: [] })));
  expect(moved.length).toBeGreaterThan(0);
});

test('no row is shifted where that is not allowed', () => {
  expect(restaggered(board, laid, trees, asked)).toEqual({ layup: laid, notes: [] });
});

import { planOf, type Plan } from '../../../src/plan.js';
import { readJob, type ReadJob } from '../../../src/job/whole/read.js';

/** A job whose board is a mesh, otherwise small: two rows on each side of a solid stringer. */
export const textWith = (board: string): string => `
job: Lake club scan
units: mm
board: ${board}
glueUp:
  centre: {stringer: basswood, thickness: 6, router: solid}
  members:
    - {strip: eps-22, thickness: 90, joint: dotted}
    - {strip: eps-22, joint: dotted}
chambers:
  pitch: 220
  datum: 260
  web: 20
  deckSkin: 10
  bottomSkin: 9
  railWall: 22
  floor: 6
  tolerance: 1
  cutter: 12
  smallest: {length: 50, height: 18, depth: 25}
  solidNose: 220
  solidTail: 200
routing: {cutterLength: 130}
fill: {name: light offcuts, density: 12 kg/m3}
`;

/** The job as it is read with a mesh beside it. */
export function readWith(bytes: Uint8Array | undefined, board = '{mesh: scan.stl, units: mm}', more = ''): ReadJob {
  return readJob(
    textWith(board) + more,
    'scan.yaml',
    () => undefined,
    undefined,
    (name) => (name === 'scan.stl' ? bytes : undefined),
  );
}

export function planWith(bytes: Uint8Array, board?: string, more?: string): Plan {
  const { job, findings } = readWith(bytes, board, more);
  if (!job) throw new Error(JSON.stringify(findings));
  return planOf(job);
}

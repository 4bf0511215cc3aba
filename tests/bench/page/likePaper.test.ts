import { afterAll, beforeAll, expect, test } from 'vitest';
import { printLength } from '../../../src/length/length.js';
import type { PathShape, Shape } from '../../../src/sheet/drawing.js';
import { faceSheet } from '../../../src/sheet/face/faceSheet.js';
import { onBench } from '../../../src/sheet/face/faceOnBench.js';
import { planParts, planView } from '../../../src/sheet/plan/planView.js';
import { sectionHalf } from '../../../src/sheet/section/sectionHalf.js';
import { sectionAt } from '../../../src/view/section.js';
import { planOfSample } from '../../sheet/sample.js';
import { closeBrowser, opened, settled, type Opened } from './opened.js';

// Its joints are flared, its tail is a swallow's.
const plan = planOfSample('fell-short');
/** The page writes hundredths, mm. */
const HUNDREDTH = 0.0051;

let bench: Opened;
beforeAll(async () => {
  bench = await opened('fell-short.yaml');
  await settled(bench.page);
});
afterAll(async () => {
  await bench.close();
  await closeBrowser();
});

type Place = readonly [number, number];

const pathsOn = (shapes: readonly Shape[], layer: string): PathShape[] =>
  shapes.filter((shape): shape is PathShape => shape.kind === 'path' && shape.layer === layer);
const placesOf = ({ vertices }: PathShape): Place[] => vertices.map(({ x, y }) => [x, y]);

/** The places that an attribute of the page's drawing names, turned up again. */
async function drawn(selector: string, attribute: 'd' | 'points'): Promise<Place[][]> {
  const texts = await bench.page
    .locator(selector)
    .evaluateAll((all, name) => all.map((each) => each.getAttribute(name)!), attribute);
  return texts.map((text) => {
    const numbers = text.match(/-?\d+(\.\d+)?/g)!.map(Number);
    return Array.from({ length: numbers.length / 2 }, (_, i): Place => [numbers[2 * i]!, -numbers[2 * i + 1]!]);
  });
}

function expectAlike(page: readonly Place[], paper: readonly Place[]): void {
  expect(page).toHaveLength(paper.length);
  const off = page.map(([x, y], i) => Math.max(Math.abs(x - paper[i]![0]), Math.abs(y - paper[i]![1])));
  expect(Math.max(...off)).toBeLessThan(HUNDREDTH);
}

test('the page draws the outline and the chambers that the plan on paper shows', async () => {
  const { shapes } = planView(plan);
  const [right, left] = pathsOn(shapes, 'outline').map(placesOf);
  const [outline] = await drawn('svg.above path.board', 'd');
  expectAlike(outline!, [...right!, ...left!.toReversed()]);
  const chambers = await drawn('svg.above polygon[data-chamber]', 'points');
  const printed = pathsOn(shapes, 'chamber').map(placesOf);
  expect(printed).toHaveLength(plan.chambers.length);
  expectAlike(chambers.flat(), printed.flat());
});

test('the page ends the joints where the plan on paper ends them', async () => {
  const printed = planParts(plan).flatMap(({ shapes }) => pathsOn(shapes, 'joint').map(placesOf));
  const joints = await bench.page
    .locator('svg.above line.joint')
    .evaluateAll((all) => all.map((each) => ['x1', 'y1', 'x2', 'y2'].map((name) => Number(each.getAttribute(name)))));
  expect(joints).toHaveLength(plan.layup.joints.length);
  joints.forEach(([x1, y1, x2, y2], i) => {
    const { at, slope } = plan.layup.joints[i]!;
    const xs = printed.filter((ends) => ends.every(([x, y]) => Math.abs(y - at - slope * x) < 1e-6)).flat();
    expectAlike(
      [
        [x1!, -y1!],
        [x2!, -y2!],
      ],
      [xs.reduce((a, b) => (b[0] < a[0] ? b : a)), xs.reduce((a, b) => (b[0] > a[0] ? b : a))],
    );
  });
});

test('the page cuts the board and its chambers as the sections on paper do', async () => {
  // The page asks for whole millimetres.
  for (const x of [400, 940, 1850]) {
    await bench.page.locator('.pole input[type=range]').fill(String(x));
    await bench.page.waitForSelector(`svg.section[aria-label*="${printLength(x, 'mm', 'feet')} from the nose"]`);
    const page = (await drawn('svg.section:first-of-type > path.board', 'd')).flat();
    const section = sectionAt(plan, x);
    const { shapes } = sectionHalf(plan, { x, thin: [] }, section, 'right', '');
    // The sheet moves the section down to its place.
    const top = Math.max(...section.loops.flatMap(({ points }) => points.map(([, z]) => z)));
    const paper = pathsOn(shapes, 'outline').flatMap(placesOf);
    const down = top - Math.max(...paper.map(([, y]) => y));
    const right = page.filter(([y]) => y > 0.1);
    expectAlike(
      right,
      paper.filter(([y]) => y > 0.1).map(([y, z]): Place => [y, z + down]),
    );
    const chambers = (await drawn('svg.section:first-of-type > path.chamber', 'd')).filter((each) =>
      each.every(([y]) => y > 0),
    );
    const printed = pathsOn(shapes, 'chamber').map((each) => placesOf(each).map(([y, z]): Place => [y, z + down]));
    expectAlike(chambers.flat(), printed.filter((each) => each.every(([y]) => y > 0)).flat());
  }
});

test('the page shows the face line that is printed at full size', async () => {
  for (const row of plan.layup.rows.filter(({ side }) => side === 'R')) {
    await bench.page.getByRole('button', { name: row.id, exact: true }).click();
    await bench.page.waitForSelector(`svg.face[aria-label*="row ${row.id},"]`);
    const page = (await drawn('svg.face path.board', 'd')).flat();
    const face = onBench(row.face, plan.board.length);
    const [paper] = pathsOn(faceSheet(plan, { row }).shapes, 'edge').map(placesOf);
    const along = paper!.map(([x, z]): Place => [face.x(x), z]);
    expectAlike(page, face.noseAt === 'left' ? along : along.toReversed());
  }
});

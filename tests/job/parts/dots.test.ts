import { expect, test } from 'vitest';
import { readText, saidAbout, textOf } from '../readSample.js';

/** The prone board with other dots, routing or keep-outs. */
const withPart = (part: string): string => {
  const name = /^\w+/.exec(part)![0];
  const bare = textOf('samples/mere-prone.yaml').replace(new RegExp(`^${name}:.*\n(?:[ #].*\n|\n)*`, 'm'), '');
  return `${bare}\n${part}\n`;
};
const said = (part: string): string[] =>
  saidAbout(withPart(part)).map((line) => line.replace(/^job\.yaml:\d+:\d+: /, ''));

test('a job that says nothing of dots and routing gets the usual', () => {
  const { job } = readText(withPart('dots: {}').replace(/^routing:.*$/m, ''));
  expect(job!.dots).toMatchObject({
    diameter: 12,
    margin: 12,
    clearance: 6,
    spacing: 600,
    may: ['trim', 'split'],
    glued: [],
  });
  expect(job!.routing).toMatchObject({ cutterLength: 80, guideStock: 12, passDepth: 12 });
});

test('a height may be told as the papers print it, and in one way only', () => {
  const at = (height: string) => `dots: {glued: [{joint: R2, dots: [{at: 1000, ${height}}]}]}`;
  expect(readText(withPart(at('overBottom: 20'))).job!.dots.glued[0]!.dots![0]!.height).toEqual({ overBottom: 20 });
  expect(readText(withPart(at('underDeck: 20'))).job!.dots.glued[0]!.dots![0]!.height).toEqual({ underDeck: 20 });
  expect(said(at('overBottom: 20, underDeck: 30'))).toEqual([
    'dots.glued[0].dots[0].underDeck: its height is given twice → keep one of up, overBottom, underDeck',
  ]);
});

test('a place may be told from the rough blank, and heights from its underside', () => {
  const { job } = readText(
    withPart('dots: {blank: {nose: 40, below: 15}, glued: [{joint: R2, dots: [{fromBlank: 1040, up: 75}]}]}'),
  );
  expect(job!.dots.glued[0]!.dots).toEqual([{ x: 1000, height: { z: 60 }, diameter: 12 }]);
});

test('overlapping dots are said with the place, how far apart they are and how far they should be', () => {
  expect(said('dots: {glued: [{joint: R2, dots: [{at: 1000, up: 50}, {at: 1005, up: 52}]}]}')).toEqual([
    'dots.glued[0].dots[1]: this dot and dot 1 of joint JR2 overlap: their middles are 5.4 mm apart → at least 12 mm, or one smear',
  ]);
});

test('a joint that is listed twice, and a place that is given twice, are said', () => {
  expect(said('dots: {glued: [{joint: R2, smears: []}, {joint: R2, smears: []}]}')).toEqual([
    'dots.glued[1].joint: joint JR2 is there twice → one entry a joint',
  ]);
  expect(said('dots: {glued: [{joint: R2, dots: [{at: 500, fromBlank: 500}]}]}')).toEqual([
    'dots.glued[0].dots[0].fromBlank: its place is given twice → keep one of at, fromTail and fromBlank',
  ]);
});

test('a bush that the cutter does not pass through is said', () => {
  expect(said('routing: {bush: 10 mm}')).toEqual([
    'routing.bush: the cutter of 12 mm does not pass through a bush of 10 mm outside → a bush of more than 12 mm, or a thinner cutter',
  ]);
});

test('a cutter that does not come out of the guide is said', () => {
  expect(said('routing: {cutterLength: 10, guideStock: 12}')).toEqual([
    'routing.cutterLength: the cutter, 10 mm long, does not come out of guides of 12 mm → more than 12 mm, or thinner guides',
  ]);
});

test('guides are shared by number or by loss', () => {
  expect(readText(withPart('routing: {guides: {count: 6}}')).job!.routing.guides).toEqual({ kind: 'count', count: 6 });
  expect(readText(withPart('routing: {guides: 5 %}')).job!.routing.guides).toEqual({ kind: 'loss', share: 0.05 });
});

// SVG 1.1, section 8.3: H and V draw level and upright lines, Z closes.
test('a keep-out may be the data of an SVG path, from its middle', () => {
  const { job } = readText(withPart('keepOuts: [{name: vent, at: 1000, right: 40, path: "M0 0 H50 V20 H0 Z"}]'));
  expect(job!.keepOuts).toEqual([
    {
      name: 'vent',
      kind: 'polygon',
      points: [
        [1000, 40],
        [1050, 40],
        [1050, 60],
        [1000, 60],
      ],
    },
  ]);
});

test('curves of a path are followed: a circle of radius 20 keeps its area', () => {
  const { job } = readText(
    withPart('keepOuts: [{name: vent, at: 1000, path: "M-20 0 A20 20 0 0 1 20 0 A20 20 0 0 1 -20 0 Z"}]'),
  );
  const keepOut = job!.keepOuts[0]!;
  const points = keepOut.kind === 'polygon' ? keepOut.points : [];
  const twice = points.reduce((sum, [x, y], i) => {
    const [x1, y1] = points[(i + 1) % points.length]!;
    return sum + x * y1 - x1 * y;
  }, 0);
  expect(Math.abs(twice / 2)).toBeGreaterThan(Math.PI * 400 * 0.998);
  expect(Math.abs(twice / 2)).toBeLessThanOrEqual(Math.PI * 400 * 1.0005);
});

test('on both sides an outline is mirrored', () => {
  const { job } = readText(
    withPart('keepOuts: [{name: fin, at: 3000, both: 100, polygon: [[0, 0], [60, 10], [60, 30]]}]'),
  );
  const [left, right] = job!.keepOuts.map((each) => (each.kind === 'polygon' ? each.points : []));
  expect(left).toEqual(right!.map(([x, y]) => [x, -y]));
});

test('outlines that cross themselves, are no path or have two parts are said', () => {
  expect(said('keepOuts: [{name: vent, at: 1000, path: "M0 0 L50 50 L50 0 L0 50 Z"}]')).toEqual([
    'keepOuts[0].path: the outline crosses itself → an outline that does not',
  ]);
  expect(said('keepOuts: [{name: vent, at: 1000, path: circle}]')).toEqual([
    'keepOuts[0].path: this is not the data of an SVG path → begin with M and close with Z: M0 0 H50 V20 H0 Z',
  ]);
  expect(said('keepOuts: [{name: vent, at: 1000, path: "M0 0 H9 V9 Z M20 20 H29 V29 Z"}]')).toEqual([
    'keepOuts[0].path: the path has 2 parts → one closed outline; several become several keep-outs',
  ]);
});

test('a keep-out on a joint needs its height there and has no depth', () => {
  expect(said('keepOuts: [{name: vent, at: 1000, joint: R2, disc: 20, fromDeck: 30}]')).toEqual([
    'keepOuts[0]: it has no height on the joint → add "up": its middle over the lowest point of the bottom',
    'keepOuts[0].fromDeck: it is drawn on a joint, where "fromDeck" means nothing → leave it out',
  ]);
});

// By hand: 150 mm behind the nose the prone board lies 125 mm up and is 53 thick; with 6 under the lowest point that is
// 184.
test('a box too thin for the board with its rocker is refused, with by how much', () => {
  expect(said('dots: {blank: {below: 6, thick: 150}}')).toEqual([
    "dots.blank.thick: a box of 150 mm is 34 mm too thin: with its rocker the board stands 184 mm over the box's underside → at least 184 mm, or leave thick out where the strips are sawn to the rocker",
  ]);
  expect(said('dots: {blank: {below: 6, thick: 184}}')).toEqual([]);
});

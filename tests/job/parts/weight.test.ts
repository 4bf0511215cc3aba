import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sayJobFinding } from '../../../src/job/finding.js';
import { readJob } from '../../../src/job/whole/read.js';
import { KG_PER_POUND } from '../../../src/length/units.js';

const sample = readFileSync('samples/tarn-rescue.yaml', 'utf8');
const bare = sample.slice(0, sample.indexOf('\n# One layer a side'));

const read = (sections: string) => readJob(`${bare}\n${sections}`, 'tarn.yaml', () => undefined);
const complaints = (sections: string) =>
  read(sections).findings.map((f) => sayJobFinding(f).replace(/^tarn.yaml:\d+:\d+: /, ''));

describe('the sections that only weigh', () => {
  test('may all be left out', () => {
    const { job, findings } = read('');
    expect(findings).toEqual([]);
    expect(job).toMatchObject({ fins: [], fittings: [], weighings: [] });
    expect(job).not.toHaveProperty('glass');
    expect(job).not.toHaveProperty('target');
  });

  test('are read into mm, kg and g/m²', () => {
    const { job } = read(`
glass: {deck: [6 oz, 135 g/m2], bottom: [8], resin: 110 %}
fins: [{name: fin, at: 120 in, base: 10 in, depth: 9 in, thick: 1 in}]
fittings: [{name: plug, fromTail: 10 in, weight: 2 oz}]
weighings: [{stage: shaped, weight: 40 lb}, {stage: filled, weight: 26 lb 4 oz, scale: 1 oz}]
rider: 80 kg
target: {balance: {at: 66 in}, web: [1 in, 2 in], fills: [eps-12, eps-15], cloths: [6 oz]}`);
    // 6 oz/yd² is 203.4 g/m² (exact definitions of ounce and yard).
    expect(job!.glass!.deck[0]).toBeCloseTo(203.43, 2);
    expect(job!.glass!.deck[1]).toBe(135);
    expect(job!.glass!.bottom[0]).toBeCloseTo(271.25, 2);
    expect(job!.glass!.resin).toBeCloseTo(1.1, 12);
    expect(job!.glass!.lap).toBeCloseTo(50.8, 9);
    expect(job!.fins).toMatchObject([
      { x: 3048, base: 254, tip: 127, thickness: 25.4, tipThickness: 6.35, density: 1750 },
    ]);
    expect(job!.weighings![0]).toEqual({ stage: 'shaped', weight: 40 * KG_PER_POUND, scale: KG_PER_POUND / 4 });
    expect(job!.weighings![1]!.scale).toBeCloseTo(KG_PER_POUND / 16, 9);
    expect(job!.rider).toBe(80);
    expect(job!.target).toMatchObject({ balance: expect.closeTo(1676.4, 9), web: [25.4, 50.8] });
    expect(job!.target!.fills!.map(({ density }) => density)).toEqual([11.2, 14.4]);
  });

  test('own materials are taken to be better known than the table, or as well as they say', () => {
    const { job } = read('');
    expect(job!.glueUp.right[0]!.material).toMatchObject({ name: 'tow-foam', spread: 0.05 });
    expect(job!.glueUp.right[1]!.material.spread).toBeUndefined();
  });
});

describe('bad input says what is wrong and what would be right', () => {
  test.each([
    ['weighings: [{stage: routed, weight: 24 lb}]', /weighings\[0\]\.stage: .*routed.*(chambered|shaped)/],
    [
      'weighings: [{stage: shaped, weight: 4000 lb}]',
      /weighings\[0\]\.weight: .*4000.0 lb cannot be right.*boards (weigh|lie)/,
    ],
    [
      'weighings: [{stage: shaped, weight: 10 lb, scale: 12 lb}]',
      /weighings\[0\]\.scale: the scale may be off by more/,
    ],
    ['target: {web: [1 in, 2 in]}', /target: it asks for nothing → weight:/],
    ['target: {weight: 38 lb, balance: {at: 60 in}}', /target: it asks for a weight and a balance/],
    ['target: {weight: 38 lb, web: [2 in, 1 in]}', /target\.web: the least is more than the most/],
    [
      'target: {weight: 38 lb, fills: [eps-21]}',
      /target\.fills\[0\]: no material is called "eps-21" → did you mean "eps-/,
    ],
    ['target: {balance: {at: 20 ft}}', /target\.balance\.at: it lies off the board/],
    [
      'glass: {deck: [8 stone]}',
      /glass\.deck\[0\]: "stone" is not a unit of a weight by area → write 200 g\/m2 or 6 oz/,
    ],
    ['glass: {deck: 8 oz}', /glass\.deck: /],
    ['glass: {resin: 1000 %}', /glass\.resin: 1000 % cannot be right/],
    [
      'fins: [{name: fin, at: 120 in, base: 10 in, depth: 9 in}]',
      /fins\[0\]\.thick: "thick" is missing → add it: thickness at the base/,
    ],
    ['fittings: [{name: plug, weight: 2 oz}]', /fittings\[0\]: it has no place along the board/],
    ['rider: -3 kg', /rider: .*cannot be right/],
  ])('%s', (sections, expected) => {
    const { job } = read(sections);
    expect(job).toBeUndefined();
    const said = complaints(sections);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(expected);
  });
});

test('the starter job is read with all its sections', () => {
  const starter = readFileSync('templates/starter.yaml', 'utf8');
  const uncommented = starter
    .replace(/^# (weighings:|target:)$/gm, '$1')
    .replace(/^# {3}(- \{stage|\w+: (\[|28 lb))/gm, '  $1');
  for (const text of [starter, uncommented]) {
    const { job, findings } = readJob(text, 'starter.yaml', () => undefined);
    expect(findings.map(sayJobFinding)).toEqual([]);
    expect(job!.fins).toHaveLength(1);
  }
  const { job } = readJob(uncommented, 'starter.yaml', () => undefined);
  expect(job!.weighings).toHaveLength(1);
  expect(job!.target!.web).toBeDefined();
});

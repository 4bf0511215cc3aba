import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import cautions from '../../templates/cautions.json' with { type: 'json' };
import phases from '../../templates/phases.json' with { type: 'json' };
import uses from '../../templates/uses.json' with { type: 'json' };
import { phasesOf, type Phase } from '../../src/book/phases.js';
import { jobJsonSchema } from '../../src/job/whole/file.js';
import { standingsOf } from '../../src/book/standing.js';
import { STAGES } from '../../src/job/spec/stage.js';
import { planOf, type Plan } from '../../src/plan.js';
import { readText } from '../job/readSample.js';
import { sampleJob } from '../samples.js';

const found = { sheets: '3 sheets', batches: 5, clamps: 9, blockGlue: 700 };
const beck = readFileSync('samples/beck-guard.yaml', 'utf8');
const planned = (text: string): Plan => {
  const { job, findings } = readText(text);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return planOf(job!);
};
const of = (plan: Plan): Phase[] => phasesOf(plan, found);
const ids = (all: readonly Phase[]) => all.map(({ id }) => id);
/** What a builder reads of them: all but the names of papers. */
const wordsOf = (all: readonly Phase[]) => JSON.stringify(all.map((phase) => ({ ...phase, papers: [] })));
/** The sentences that hold some words. */
const saying = (all: readonly Phase[], words: RegExp) =>
  wordsOf(all)
    .split('"')
    .filter((each) => words.test(each));

const whole = planned(beck);

describe('the phases of the work', () => {
  test('name every kind of paper that there is, and no other', () => {
    const named = new Set(phases.phases.flatMap(({ papers }) => papers));
    expect([...named].sort()).toEqual(Object.keys(uses.kinds).sort());
  });

  test('have their cautions, each one that there is', () => {
    const there = cautions.cautions.map(({ id }) => id);
    for (const { id, cautions: its } of phases.phases) {
      expect(its.length, id).toBeGreaterThan(0);
      for (const caution of its) expect(there, id).toContain(typeof caution === 'string' ? caution : caution.say);
    }
  });

  test('ask for no measure that has no place: in the job, by its schema, or in the tracker', () => {
    const measures = phases.phases.flatMap(({ measure }) => measure);
    expect(measures.length).toBeGreaterThan(10);
    for (const { key } of measures) expect(key === 'tracker' || isInJob(key), key).toBe(true);
    // The check itself: a key that nobody may write has no place.
    expect(isInJob('weighings[].wieght')).toBe(false);
    expect(isInJob('fins[].build.panel.cured')).toBe(true);
  });

  test('ask for a weight at every stage at which a board is weighed, once', () => {
    const stages = phases.phases.flatMap(({ measure }) =>
      measure.flatMap((each) =>
        'asks' in each && each.asks !== undefined && 'stage' in each.asks ? [each.asks.stage] : [],
      ),
    );
    expect(stages).toEqual([...STAGES]);
  });

  test('come in the order of the work, counted from 1, with all their numbers', () => {
    for (const plan of [whole, planOf(sampleJob('tarn-rescue')), planOf(sampleJob('fell-short'))]) {
      const all = of(plan);
      expect(all.map(({ number }) => number)).toEqual(all.map((_, i) => i + 1));
      expect(wordsOf(all)).not.toMatch(/\{[a-z]\w*\}|undefined|NaN/i);
      for (const { steps, ready, id } of all) {
        expect(steps.length, id).toBeGreaterThan(0);
        expect(ready.length, id).toBeGreaterThan(0);
      }
    }
  });
});

/** Whether a key may be written in a job: `weighings[].weight`, `materials.*.density`. */
function isInJob(key: string): boolean {
  interface Node {
    readonly properties?: Readonly<Record<string, Node>>;
    readonly items?: Node;
    readonly additionalProperties?: Node | boolean;
    readonly anyOf?: readonly Node[];
  }
  let nodes: Node[] = [jobJsonSchema() as Node];
  for (const step of key.split(/\.|(?=\[\])/)) {
    nodes = nodes
      .flatMap((node) => [node, ...(node.anyOf ?? [])])
      .flatMap((node): (Node | undefined)[] => {
        if (step === '[]') return [node.items];
        if (step === '*')
          return [typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined];
        return [node.properties?.[step]];
      })
      .filter((node): node is Node => node !== undefined);
  }
  return nodes.length > 0;
}

describe('the phases of a board', () => {
  test('have their cautions, whatever it has not', () => {
    for (const { id, cautions: its } of of(planned(beck))) expect(its.length, id).toBeGreaterThan(0);
  });

  test('leave out what it has not: no fin', () => {
    const plan = planned(beck.replace(/^ {4}build:\n(?: {6}.*\n)+/m, ''));
    expect(ids(of(whole))).toContain('fin');
    expect(ids(of(plan))).not.toContain('fin');
    expect(saying(of(plan), /taper|the fin paper|panel/)).toEqual([]);
    // A fin that is bought is set all the same.
    expect(ids(of(plan))).toContain('fit');
    const none = planned(beck.replace(/^fins:\n(?: .*\n)+/m, ''));
    expect(ids(of(none))).not.toContain('fit');
    expect(saying(of(none), /\bfins?\b/)).toEqual([]);
  });

  test('leave out what it has not: no blocks, because nothing is routed', () => {
    const plan = planned(beck.replace('height: 25', 'height: 84'));
    expect(plan.chambers).toEqual([]);
    for (const id of ['mark', 'routing', 'cut', 'fill']) expect(ids(of(plan))).not.toContain(id);
    expect(saying(of(plan), /\bblocks?\b|chamber(?!wright)/)).toEqual([]);
  });

  test('leave out what it has not: no wood', () => {
    const foam = `  members:
    - {strip: pu-blank, thickness: 75, joint: dotted}
    - {strip: pu-blank, joint: bonded}
`;
    const plan = planned(
      beck
        .replace('  centre: {stringer: western-red-cedar, thickness: 12, router: solid}\n', '  centreJoint: dotted\n')
        .replace(/ {2}members:\n(?: {4}- .*\n)+/, foam)
        .replace(/ {2}lumber:\n(?: {4}- .*\n)+/, '')
        .replace(/^fins:\n(?: .*\n)+/m, ''),
    );
    expect(plan.layup.members.every(({ kind }) => kind === 'strip')).toBe(true);
    expect(saying(of(plan), /stringer|\bplank|\bwood\b/i)).toEqual([]);
    expect(wordsOf(of(whole))).toMatch(/stringers/);
  });

  test('leave out what it has not: no cloth, no sealing, no joint to open', () => {
    const bare = planned(
      beck.replace(/^glass:\n(?: .*\n)+/m, 'glass: {deck: [], bottom: [], sealer: 0, hotCoat: 0}\n'),
    );
    for (const id of ['seal', 'laminate', 'coat']) expect(ids(of(bare))).not.toContain(id);
    const bonded = planned(beck.replace(/joint: dotted/g, 'joint: bonded'));
    for (const id of ['open', 'glue-back']) expect(ids(of(bonded))).not.toContain(id);
  });

  test('come after phases that stand before them, and after those of what a board has not', () => {
    for (const plan of [
      whole,
      planOf(sampleJob('tarn-rescue')),
      planned(beck.replace(/joint: dotted/g, 'joint: bonded')),
    ])
      for (const { after, number } of of(plan))
        for (const before of after) expect(of(plan).find(({ id }) => id === before)!.number).toBeLessThan(number);
    const after = (plan: Plan, name: string) => of(plan).find(({ id }) => id === name)!.after;
    expect(after(whole, 'fit')).toEqual(['coat', 'fin']);
    // Without a fin of its own, what comes before making it.
    expect(after(planOf(sampleJob('tarn-rescue')), 'fit')).toEqual(['coat', 'buy']);
  });

  test('have steps whose names keep apart what is ticked', () => {
    for (const plan of [whole, planOf(sampleJob('tarn-rescue')), planOf(sampleJob('fell-short'))])
      for (const { id, ready, steps } of of(plan)) {
        const names = [...ready, ...steps].map((line) => line.id);
        expect(new Set(names).size, id).toBe(names.length);
      }
  });

  test('ask for every measure that goes into the job by a number, in the way of its key', () => {
    const ofKey: Readonly<Record<string, string>> = {
      'weighings[].weight': 'weight',
      'shaped[].thickness': 'thickness',
      'shaped[].width': 'width',
      'shaped[].chamber': 'wall',
      'materials.*.density': 'density',
      'printer.across': 'printer',
      'fins[].build.panel.cured': 'fin',
      'fins[].build.blankThick': 'fin',
      'fins[].weight': 'fin',
    };
    // Rows that are routed, and dots that lie elsewhere, are more than a number.
    const others = ['tracker', 'routed', 'dots.glued[].dots'];
    for (const { key, asks } of phases.phases.flatMap(({ measure }) => measure as Phase['measures'])) {
      expect(asks?.of, key).toBe(ofKey[key]);
      expect(key in ofKey || others.includes(key), key).toBe(true);
    }
  });

  test('are done up to where something was written down, the next is now, others wait or can be begun', () => {
    const states = (text: string) => {
      const standings = standingsOf(of(planned(text)));
      return (...ids: string[]) => ids.map((id) => standings.get(id)!.state);
    };
    expect(states(beck)('print', 'buy')).toEqual(['now', 'waiting']);
    const weighed = states(`${beck}\nweighings:\n  - {stage: blank, weight: 10 kg}\n`);
    expect(weighed('glue-up', 'shape', 'open', 'fin')).toEqual(['done', 'now', 'waiting', 'ready']);
    const shaped = states(`${beck}\nshaped:\n  - {at: 1400, thickness: 112.5}\n`);
    expect(shaped('glue-up', 'shape', 'open', 'cut')).toEqual(['done', 'done', 'now', 'ready']);
    const sealed = states(`${beck}\nweighings:\n  - {stage: sealed, weight: 8 kg}\n`);
    // The fin stands before sealing in the list, but nothing says that it is made.
    expect(sealed('fill', 'fin', 'seal', 'laminate')).toEqual(['done', 'ready', 'done', 'now']);
    const finished = standingsOf(of(planned(`${beck}\nweighings:\n  - {stage: finished, weight: 9.6 kg}\n`)));
    expect(new Set([...finished.values()].map(({ state }) => state))).toEqual(new Set(['done']));
  });

  test('are done when all their steps are ticked, and what waits says for which', () => {
    const all = of(whole);
    const ticks = new Set(
      all
        .filter(({ id }) => ['print', 'buy'].includes(id))
        .flatMap(({ id, steps }) => steps.map((s) => `${id} ${s.id}`)),
    );
    const at = (without?: string) =>
      standingsOf(all, {
        isTicked: (phase, line) => ticks.has(`${phase} ${line}`) && `${phase} ${line}` !== without,
        finished: new Set(['cut']),
      });
    expect(at().get('buy')).toEqual({ state: 'done' });
    expect(at('buy store').get('print')).toEqual({ state: 'done' });
    // Blocks are cut to the shaped board: when they are all cut, it is shaped.
    expect(at().get('shape')).toEqual({ state: 'done' });
    expect(at().get('open')).toEqual({ state: 'now' });
    expect(at().get('routing')).toEqual({ state: 'waiting', waitsFor: [7] });
    expect(at().get('fill')).toEqual({ state: 'waiting', waitsFor: [8] });
  });
});

import { describe, expect, test } from 'vitest';
import words from '../../templates/notes.json' with { type: 'json' };
import type { Job } from '../../src/job/job.js';
import { planOf } from '../../src/plan.js';
import { sayNote } from '../../src/verdict/note.js';
import { sampleJob, SAMPLES } from '../samples.js';

const withMay = (job: Job, may: Job['dots']['may']): Job => ({ ...job, dots: { ...job.dots, may } });
const sentences = (job: Job) => planOf(job).notes.map((note) => sayNote(note, job.units));
/** A place for a name with no name in it. */
const EMPTY = /\(\s*\)|: *$|: →|of *$|\bof *\(|\{|^ |undefined|NaN/;

describe.each(SAMPLES)('every note of %s', (name) => {
  const job = sampleJob(name);
  test.each([
    ['as it is', job],
    ['with rows that may be shifted', withMay(job, ['stagger'])],
    ['with dots that may do nothing', withMay(job, [])],
    ['with glue on a joint that it has not', { ...job, dots: { ...job.dots, glued: [{ joint: 'JR9', smears: [] }] } }],
    [
      'with glue on a joint and none that is opened',
      {
        ...job,
        glueUp: { ...job.glueUp, right: job.glueUp.right.map((each) => ({ ...each, joint: 'bonded' as const })) },
        dots: { ...job.dots, glued: [{ joint: 'JR2', smears: [] }] },
      },
    ],
  ])('%s is a whole sentence', (_, each) => {
    expect(sentences(each).filter((sentence) => EMPTY.test(sentence))).toEqual([]);
  });
});

test('a row that is shifted says what for, and not that something is in its way', () => {
  const shifted = SAMPLES.flatMap((name) => {
    const job = withMay(sampleJob(name), ['stagger']);
    return planOf(job).notes.flatMap((note) => (note.kind === 'shifted' ? [sayNote(note, job.units)] : []));
  });
  expect(shifted.length).toBeGreaterThan(0);
  for (const sentence of shifted) expect(sentence).toContain(words.why.stagger);
});

test('a row is called kept out only where nothing else left its places solid', () => {
  const job = sampleJob('fell-short');
  const { notes } = planOf({ ...job, chambers: { ...job.chambers, railWall: 200 } });
  for (const note of notes.filter(({ place, why }) => place === undefined && why === 'keep-out')) {
    const places = notes.filter(({ row, place, kind }) => row === note.row && place !== undefined && kind === 'solid');
    expect(places.map(({ why }) => why).filter((why) => why !== 'keep-out' && why !== 'ends')).toEqual([]);
  }
});

import { describe, expect, it } from 'vitest';
import { sayJobFinding } from '../../../src/job/finding.js';
import type { Triangles } from '../../../src/scan/triangles.js';
import { kernel } from '../../oracle/kernel.js';
import { ellipsoidBoard, stlBytes } from '../../scan/bodies.js';
import { readWith } from './scanned.js';

const board = ellipsoidBoard(await kernel(), 96);
const stl = stlBytes(board);
const scaled = (factor: number): Triangles => ({ ...board, positions: board.positions.map((v) => v * factor) });
const said = (bytes: Uint8Array | undefined, job?: string) =>
  readWith(bytes, job).findings.map(sayJobFinding).join('\n');

describe('what is wrong with a mesh is said with what to do, and there is no job', () => {
  it.each([
    ['no such file', undefined, undefined, 'there is no file "scan.stl" beside the job'],
    ['a path', stl, '{mesh: ../scan.stl, units: mm}', 'is a path'],
    ['cut short', stl.subarray(0, 9000), undefined, /is cut short: 9000 of \d+ bytes are there/],
    ['metres that say mm', stlBytes(scaled(0.001)), undefined, /2\.9 mm long: boards are 0\.5 to 8 m → units: m or ft/],
    ['inches that say m', stlBytes(scaled(1 / 25.4)), '{mesh: scan.stl, units: m}', /114 m long.*units: .*in/],
    [
      'a length of another board',
      stl,
      '{mesh: scan.stl, units: mm, length: 2.5 m}',
      /2900\.\d mm long, and "length" says 2500 mm/,
    ],
    [
      'two marks',
      stl,
      '{mesh: scan.stl, units: mm, marks: [{at: 100, found: [1, 2, 3]}, {at: 200, found: [1, 2, 3]}]}',
      'three marks or more',
    ],
    ['a unit that is none', stl, '{mesh: scan.stl, units: yard}', /units.*mm, cm, m, in/],
    ['no unit', stl, '{mesh: scan.stl}', '"units" is missing'],
    ['numbers beside the mesh', stl, '{mesh: scan.stl, units: mm, nose: round}', /"nose"/],
  ] as const)('%s', (_, bytes, job, expected) => {
    const text = said(bytes, job);
    if (typeof expected === 'string') expect(text).toContain(expected);
    else expect(text).toMatch(expected);
    expect(readWith(bytes, job).job).toBeUndefined();
  });

  it('a place that lies off the scanned board is told as with any board', () => {
    const more = 'keepOuts:\n  - {name: plug, at: 3500, disc: 30}\n';
    expect(readWith(stl, undefined, more).findings.map(sayJobFinding).join()).toMatch(/599\.\d mm behind the tail/);
  });

  it('nothing is wrong with the mesh itself', () => {
    expect(said(stl)).toBe('');
  });
});

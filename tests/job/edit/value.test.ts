import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { withoutKey, withValue } from '../../../src/job/edit/value.js';

const JOB = `# A board of the club's own.
job: Heron   # the third of its kind
units: in
chambers:
  pitch: 12 in     # as on the last one
  # thick enough for a dot
  web: 1 in
  smallest: {length: 3 in, height: 1 in}   # tried in the shop

keepOuts:
  - {name: leash plug, fromTail: 10 in, disc: 2 in}
  - name: fin box
    at: 100 in
    right: 3 in # seen from above
    rectangle: {length: 11 in, width: 1 1/2 in}
`;

const changedLines = (before: string, after: string) => {
  const [a, b] = [before.split('\n'), after.split('\n')];
  return b.filter((line, i) => line !== a[i]);
};

describe('a value changed in a job file', () => {
  test('changes its own line and nothing else, the comment on it included', () => {
    const after = withValue(JOB, ['chambers', 'pitch'], '11 1/2 in');
    expect(changedLines(JOB, after)).toEqual(['  pitch: 11 1/2 in     # as on the last one']);
  });

  test('may stand inside braces', () => {
    expect(changedLines(JOB, withValue(JOB, ['chambers', 'smallest', 'height'], '3/4"'))).toEqual([
      '  smallest: {length: 3 in, height: 3/4"}   # tried in the shop',
    ]);
    expect(changedLines(JOB, withValue(JOB, ['keepOuts', 0, 'disc'], '50 mm'))).toEqual([
      '  - {name: leash plug, fromTail: 10 in, disc: 50 mm}',
    ]);
  });

  test('that was left out is added at the end of its block, moved in as its neighbours are', () => {
    const after = withValue(JOB, ['chambers', 'railWall'], '19 mm');
    expect(after).toContain('# tried in the shop\n  railWall: 19 mm\n\nkeepOuts:');
    expect(withValue(JOB, ['keepOuts', 0, 'left'], '2 in')).toContain('disc: 2 in, left: 2 in}\n');
    expect(parse(withValue(JOB, ['keepOuts', 1, 'fromDeck'], '20 mm')).keepOuts[1].fromDeck).toBe('20 mm');
  });

  test('whose whole block was left out brings the block along', () => {
    const bare = 'job: Heron\nunits: mm\nfill: {foam: eps-12}\n';
    expect(parse(withValue(bare, ['chambers', 'smallest', 'depth'], '30')).chambers).toEqual({
      smallest: { depth: 30 },
    });
  });

  test('keeps the line ends of another system', () => {
    const windows = JOB.replaceAll('\n', '\r\n');
    const after = withValue(windows, ['chambers', 'railWall'], '19 mm');
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
    expect(parse(after).chambers.railWall).toBe('19 mm');
  });

  test('may be at the very end of a file without a last line end', () => {
    expect(parse(withValue('a: 1\nchambers:\n  web: 2', ['chambers', 'pitch'], '30')).chambers).toEqual({
      web: 2,
      pitch: 30,
    });
  });

  test('reads back as it was typed, whatever was typed, and leaves every other value alone', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 30 }),
        fc.constantFrom(['chambers', 'web'], ['keepOuts', 0, 'disc']),
        (typed, path) => {
          const after = parse(withValue(JOB, path, typed));
          const before = parse(JOB);
          const put = (root: Record<string, never>) =>
            path.reduce<never>((node, key) => node[key as never], root as never);
          const value: unknown = put(after);
          expect(value === typed || value === Number(typed)).toBe(true);
          const holder = path.slice(0, -1).reduce<Record<string, unknown>>((node, key) => node[key] as never, before);
          holder[path.at(-1)!] = value;
          expect(after).toEqual(before);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('a key taken out of a job file', () => {
  test('takes its line along', () => {
    const after = withoutKey(JOB, ['chambers', 'web']);
    expect(after).toBe(JOB.replace('  web: 1 in\n', ''));
  });

  test('takes its comma along inside braces, wherever it stands', () => {
    expect(withoutKey(JOB, ['keepOuts', 0, 'name'])).toContain('- {fromTail: 10 in, disc: 2 in}\n');
    expect(withoutKey(JOB, ['keepOuts', 0, 'fromTail'])).toContain('- {name: leash plug, disc: 2 in}\n');
    expect(withoutKey(JOB, ['keepOuts', 0, 'disc'])).toContain('- {name: leash plug, fromTail: 10 in}\n');
  });

  test('that is not there changes nothing', () => {
    expect(withoutKey(JOB, ['chambers', 'floor'])).toBe(JOB);
  });
});

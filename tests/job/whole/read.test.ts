import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/whole/read.js';
import { besideSamples, readText, saidAbout, textOf } from '../readSample.js';

const tarn = textOf('samples/tarn-rescue.yaml');
const mere = textOf('samples/mere-prone.yaml');
const fell = textOf('samples/fell-short.yaml');

/** The first occurrence replaced; fails when there is none, so that no test passes on an unchanged file. */
const with_ = (text: string, from: string, to: string): string => {
  expect(text).toContain(from);
  return text.replace(from, to);
};
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

describe('jobs that are right', () => {
  it.each(['samples/tarn-rescue.yaml', 'samples/mere-prone.yaml', 'samples/fell-short.yaml', 'templates/starter.yaml'])(
    '%s reads without a finding',
    (path) => {
      const { job, findings } = readText(textOf(path));
      expect(findings).toEqual([]);
      expect(job).toBeDefined();
    },
  );

  it('are in millimetres throughout: 11 ft 4 in are 3454.4 mm, an inch of stringer 25.4', () => {
    const { job } = readText(tarn);
    expect(job!.board.length).toBeCloseTo(3454.4, 9);
    expect(job!.glueUp.right.find(({ kind, routing }) => kind === 'stringer' && routing === 'solid')).toMatchObject({
      joint: 'bonded',
      thickness: 25.4,
    });
    expect(job!.glueUp.right.at(-1)!.thickness).toBeUndefined();
    // 3 lb/ft3, ASTM C578 type V prints 48 kg/m³ beside it.
    expect(job!.glueUp.right[0]!.material.density).toBeCloseTo(48.06, 2);
  });

  it('count stations from the tail forward', () => {
    const { job } = readText(mere);
    expect(job!.board.profile.at(-1)).toEqual({ x: 4000, bottom: 45, thickness: 18 });
  });

  it('read the same as YAML and as JSON', () => {
    const asJson = JSON.stringify({
      job: 'One',
      units: 'mm',
      board: {
        length: '2 m',
        nose: 'round',
        tail: { squash: 80, corner: '1 1/2 in' },
        stations: [
          { at: 0, bottom: 100, thick: 10 },
          { at: 500, width: 480 },
          { at: 1000, width: 520, bottom: 0, thick: 70, section: { apex: '45 %', above: 0.8, below: 0.75, crown: 6 } },
          { at: 2000, bottom: 40, thick: 10 },
        ],
      },
      glueUp: {
        members: [
          { strip: 'eps-22', thickness: 100 },
          { strip: 'eps-22', joint: 'dotted' },
        ],
      },
      fill: { foam: 'eps-12' },
    });
    const asYaml = `job: One
units: mm
board:
  length: 2 m
  nose: round
  tail: {squash: 80, corner: 1 1/2 in}
  stations:
    - {at: 0, bottom: 100, thick: 10}
    - {at: 500, width: 480}
    - {at: 1000, width: 520, bottom: 0, thick: 70, section: {apex: 45 %, above: 0.8, below: 0.75, crown: 6}}
    - {at: 2000, bottom: 40, thick: 10}
glueUp:
  members:
    - {strip: eps-22, thickness: 100}
    - {strip: eps-22, joint: dotted}
fill: {foam: eps-12}
`;
    expect(saidAbout(asYaml)).toEqual([]);
    expect(saidAbout(asJson)).toEqual([]);
    expect(readText(asJson).job).toEqual(readText(asYaml).job);
    expect(readText(asYaml).job!.board.right.points).toEqual([
      { x: 500, half: 240 },
      { x: 1000, half: 260 },
    ]);
  });

  it('take heights from the lowest bottom, in a table as at stations, whatever the base line', () => {
    const { job } = readText(fell);
    const bottoms = job!.board.profile.map(({ bottom }) => bottom);
    expect(Math.min(...bottoms)).toBe(0);
    expect(job!.board.profile[0]!.bottom).toBeCloseTo(138 - 20.6, 9); // the table's lowest keel point is 20.6
    const { job: raised, findings } = readText(
      mere.replace(/bottom: (\d+)/g, (_, mm: string) => `bottom: ${Number(mm) + 7}`),
    );
    expect(raised!.board.profile).toEqual(readText(mere).job!.board.profile);
    expect(findings).toMatchObject([{ severity: 'warning', what: 'the lowest bottom height is 7 mm, not 0' }]);
  });

  it('put a keep-out for both sides on both', () => {
    const { job } = readText(mere);
    expect(job!.keepOuts.filter(({ name }) => name.startsWith('deck lashing'))).toMatchObject([
      { name: 'deck lashing left', x: 1150, y: -150, radius: 20 },
      { name: 'deck lashing right', x: 1150, y: 150, radius: 20 },
    ]);
  });
});

describe('jobs that are wrong', () => {
  const cases: [string, string, string, string, string, RegExp][] = [
    [
      'an unknown key',
      tarn,
      'web: 1 in',
      'wbe: 1 in',
      'wbe',
      /chambers\.wbe: "wbe" is not known here → did you mean "web"\? Known here: pitch, datum, /,
    ],
    [
      'a wrong unit',
      tarn,
      'railWall: 3/4 in',
      'railWall: 3/4 lb',
      '3/4 lb',
      /chambers\.railWall: "lb" is not a unit of a length → write 19 mm, /,
    ],
    [
      'a length that is a list',
      tarn,
      'railWall: 3/4 in',
      'railWall: [3, 4]',
      '[3, 4]',
      /chambers\.railWall: a list is written where a single value should be → /,
    ],
    [
      'an absurd length',
      tarn,
      'length: 11 ft 4 in',
      'length: 114 ft',
      '114 ft',
      /board\.length: 114 ft cannot be right here → between .* in and 26 ft .* in: a shorter board/,
    ],
    [
      'a negative thickness',
      mere,
      'thickness: 60',
      'thickness: -60',
      '-60',
      /glueUp\.members\[1\]\.thickness: -60 mm cannot be right here → between 0\.5 mm/,
    ],
    [
      'stations out of order',
      mere,
      'at: 1000,',
      'at: 500,',
      'at: 500',
      /board\.stations\[4\]\.at: the station at 500 mm follows one at 600 mm → list the stations once each, from nose to tail/,
    ],
    [
      'a station twice',
      mere,
      'at: 1000,',
      'at: 600,',
      'at: 600, bottom: 33',
      /board\.stations\[4\]\.at: a second station at 600 mm → /,
    ],
    [
      'a station off the board',
      mere,
      'at: 3850,',
      'at: 4850,',
      'at: 4850',
      /board\.stations\[11\]\.at: it lies off the board, 850 mm behind the tail → a place from 0 to 4000 mm/,
    ],
    [
      'a board without its tip',
      mere,
      '    - {fromTail: 0, bottom: 45, thick: 18}\n',
      '',
      'stations:',
      /board\.stations: no bottom height and thickness at the tail tip → add a station \{fromTail: 0/,
    ],
    [
      'members wider than the board',
      mere,
      'thickness: 60',
      'thickness: 240',
      '{stringer: paulownia',
      /glueUp\.members\[2\]: this member begins 320 mm from the centreline, outside the board → less than 252 mm/,
    ],
    [
      'a material nobody knows',
      mere,
      'stringer: paulownia',
      'stringer: paulonia',
      'paulonia',
      /no material is called "paulonia" → did you mean "paulownia"\?/,
    ],
    [
      'a member inside without thickness',
      mere,
      ', thickness: 60',
      '',
      '{strip: eps-22, joint: dotted}',
      /glueUp\.members\[1\]: this member has no thickness → add it/,
    ],
    [
      'an outermost member with thickness',
      mere,
      '{strip: eps-22, joint: bonded}',
      '{strip: eps-22, joint: bonded, thickness: 50}',
      'thickness: 50}',
      /members\[3\]\.thickness: the outermost member has a thickness → leave it out/,
    ],
    [
      'skins that leave no height',
      mere,
      'deckSkin: 16',
      'deckSkin: 130',
      '130',
      /chambers\.deckSkin: deck skin, bottom skin and twice the tolerance leave 8 mm of 155 mm, the board at its thickest → walls that leave at least 30 mm/,
    ],
    [
      'a web as wide as the pitch',
      mere,
      'web: 30',
      'web: 300',
      'web: 300',
      /chambers\.web: the web of 300 mm leaves nothing of the pitch of 300 mm → a web less than the pitch/,
    ],
    [
      'a rail wall that leaves no depth',
      mere,
      'railWall: 22',
      'railWall: 250',
      '250',
      /chambers\.railWall: the rail wall leaves no chamber in half of the board, 252 mm at its widest → at most 220\.5 mm/,
    ],
    [
      'a cutter wider than the smallest chamber',
      mere,
      'cutter: 12',
      'cutter: 40',
      'cutter: 40',
      /chambers\.cutter: the cutter is wider than the smallest height of a chamber, 30 mm → /,
    ],
    [
      'a keep-out behind the tail',
      mere,
      'fromTail: 180',
      'at: 4180',
      '4180',
      /keepOuts\[0\]\.at: it lies off the board, 180 mm behind the tail → /,
    ],
    [
      'a keep-out beside the rail',
      mere,
      'both: 150',
      'both: 290',
      '290',
      /keepOuts\[2\]\.both: its middle lies .* outside the rail → /,
    ],
    [
      'a table that is not there',
      fell,
      'fell-short.csv',
      'fel-short.csv',
      'fel-short.csv',
      /board\.offsets: there is no file "fel-short\.csv" beside the job → /,
    ],
    [
      'a table somewhere else',
      fell,
      'fell-short.csv',
      '../fell-short.csv',
      '../fell-short.csv',
      /board\.offsets: "\.\.\/fell-short\.csv" is a path → the name of a file in the same folder as the job/,
    ],
    [
      'a shape nobody knows',
      mere,
      'nose: pointed',
      'nose: pointy',
      'pointy',
      /board\.nose: "pointy" is written → did you mean "pointed"\? .*round, pointed, or \{square/,
    ],
    [
      'a misspelt key inside a choice',
      fell,
      'depth: 70',
      'dept: 70',
      'dept',
      /board\.tail\.dept: "dept" is not known here → did you mean "depth"\?/,
    ],
  ];

  it.each(cases)('%s: said once, with line and remedy', (_, sample, from, to, at, message) => {
    const text = with_(sample, from, to);
    const { job, findings } = readText(text);
    expect(job).toBeUndefined();
    expect(saidAbout(text)).toEqual([expect.stringMatching(message)]);
    expect(findings[0]!.where).toMatchObject({ file: 'job.yaml', line: lineOf(text, at) });
  });

  it('have all their mistakes said at once, of form and of sense together', () => {
    let text = with_(mere, 'railWall: 22', 'railWall: 22 kg');
    text = with_(text, 'web: 30', 'web: 300');
    text = with_(text, 'at: 1000,', 'at: 500,');
    text = with_(text, 'tail: round', 'tail: rund');
    text = with_(text, 'disc: 60', 'dics: 60');
    text = with_(text, 'fill: {foam: eps-12}', 'fill: {foam: eps-13}');
    expect(readText(text).findings.map(({ where }) => where.path)).toEqual([
      'board.tail',
      'board.stations[4].at',
      'chambers.web',
      'chambers.railWall',
      'keepOuts[0].dics',
      'fill.foam',
    ]);
  });

  it('with a whole part missing are said to lack it, and nothing about what would be in it', () => {
    expect(saidAbout(with_(mere, 'glueUp:', 'gluUp:'))).toEqual([
      expect.stringMatching(/^job\.yaml:\d+:1: gluUp: "gluUp" is not known here → did you mean "glueUp"/),
    ]);
    expect(saidAbout('job: One\nunits: mm\n')).toEqual([
      'job.yaml:1:1: board: "board" is missing → add it: the finished board, before glassing',
      'job.yaml:1:1: glueUp: "glueUp" is missing → add it: how the blank is glued up from strips and stringers',
      'job.yaml:1:1: fill: "fill" is missing → add it: the light foam that the blocks are cut from',
    ]);
  });

  it('whose blank cannot be opened are warned of, and read', () => {
    const { job, findings } = readText(mere.replaceAll('dotted', 'bonded'));
    expect(job).toBeDefined();
    expect(findings).toMatchObject([{ severity: 'warning', where: { path: 'glueUp.members' } }]);
  });

  it("have a table's mistakes said with the table's lines", () => {
    const table = with_(besideSamples('fell-short.csv')!, '100,39.6,112.7,', '100,39.6,112.7 kg,');
    const { job, findings } = readJob(fell, 'job.yaml', () => table);
    expect(job).toBeUndefined();
    expect(findings).toMatchObject([
      { where: { file: 'fell-short.csv', line: 4, path: 'z' }, what: '"kg" is not a unit of a length' },
    ]);
  });

  it('a tab in a line that is repeated is shown as a space', () => {
    const { findings } = readText(`${mere}\nfill:\t{foam:\teps-12}}\n`);
    expect(findings.length).toBeGreaterThan(0);
    for (const { what, remedy } of findings) expect(what + remedy).not.toMatch(/\p{Cc}/u);
  });

  it('give findings and never an exception, whatever is changed in them', () => {
    const words = [
      '',
      '-',
      '{',
      ']',
      ': ',
      '\n',
      '  ',
      '"',
      '*a',
      '&a',
      '999',
      '-1',
      'kg',
      'null',
      '[1]',
      '# ',
      '\t',
      '0',
      'joint',
    ];
    const edit = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.nat(12),
      put: fc.constantFrom(...words),
    });
    const sample = fc.constantFrom(tarn, mere, fell);
    fc.assert(
      fc.property(sample, fc.array(edit, { minLength: 1, maxLength: 3 }), (text, edits) => {
        const changed = edits.reduce((t, { at, cut, put }) => {
          const start = Math.floor(at * t.length);
          return t.slice(0, start) + put + t.slice(start + cut);
        }, text);
        const { job, findings } = readText(changed);
        const errors = findings.filter(({ severity }) => severity === 'error');
        expect(job === undefined).toBe(errors.length > 0);
        for (const { what, remedy, where } of findings) {
          expect([what, remedy, where.path].join(' ')).not.toMatch(/NaN|Infinity|undefined|\p{Cc}/u);
          expect(remedy).not.toBe('');
        }
        expect(JSON.stringify(job ?? {})).not.toContain('null');
      }),
      { numRuns: 400 },
    );
  });
});

import Papa from 'papaparse';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { publishedOf, resultText } from '../../src/view/result.js';
import { kernel, outsideOf, solidOfChamber } from '../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { called } from './called.js';
import { chamberwright } from './run.js';

const folder = () => mkdtempSync(join(tmpdir(), 'cw-'));
const sample = (name: string) => `samples/${name}.yaml`;

describe('plan', () => {
  test.each(SAMPLES)('prints what is computed, as data: %s', async (name) => {
    const { code, out, err } = await called(['plan', sample(name), '--json']);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(JSON.parse(resultText(publishedOf(planOf(sampleJob(name))))));
    // No figure is finer than a millionth: what engines compute differs below.
    expect(out).not.toMatch(/\d\.\d{7}/);
  });

  test('prints a report that names every chamber', () => {
    const { code, out } = chamberwright(['plan', sample('mere-prone')]);
    expect(code).toBe(0);
    for (const { id } of planOf(sampleJob('mere-prone')).chambers) expect(out).toContain(id);
  });
});

describe('check', () => {
  test.each(SAMPLES)('finds the sample sound: %s', (name) => {
    const { code, out } = chamberwright(['check', sample(name)]);
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+ chambers: every wall is at least what is asked\.\n$/);
  });

  test('names the chambers that must shrink on the board as shaped where all are asked for, and ends with 1', async () => {
    const job = join(folder(), 'shaped.yaml');
    writeFileSync(
      job,
      `${readFileSync(sample('mere-prone'), 'utf8')}\nshaped:\n  - {at: 2 m, thickness: 140 mm, off: deck}\n`,
    );
    const { code, err } = await called(['check', job, '--all']);
    expect(code).toBe(1);
    expect(err).toMatch(/As shaped: \d+ of \d+ chambers as drawn must shrink; the worst is /);
    expect(err).toMatch(
      /[LCR]\d-\d+\w?: deck skin [\d.]+ mm, [\d.]+ mm under the [\d.]+ mm asked; thinnest [\d.]+ mm from the nose/,
    );
    expect(err).toMatch(/to [\d.]+ mm × [\d.]+ mm × [\d.]+ mm, from/);
  });

  test('says how much too deep a router may go, and which chamber goes first', () => {
    const little = chamberwright(['check', sample('mere-prone'), '--depth-error', '0.1mm']);
    expect(little.code).toBe(0);
    const [, borne] = /the plan bears ([\d.]+) mm; [LCR]\d-\d+\w? goes first/.exec(little.out)!;
    const more = chamberwright(['check', sample('mere-prone'), '--depth-error', `${Number(borne) + 0.3}mm`]);
    expect(more.code).toBe(1);
  });
});

describe('mesh', () => {
  // STL holds no joins: the triangles are read back as anyone would, and a wall is measured on them by an independent
  // kernel.
  test.each([
    ['as drawn', ''],
    ['as measured after shaping', '\nshaped:\n  - {at: 2 m, thickness: 144 mm, off: deck}\n'],
  ])('writes the surface the walls were proved against, %s', async (_, shaped) => {
    const dir = folder();
    const [job, file] = [join(dir, 'job.yaml'), join(dir, 'board.stl')];
    writeFileSync(job, readFileSync(sample('mere-prone'), 'utf8') + shaped);
    expect(await called(['mesh', job, '-o', file])).toMatchObject({ code: 0, err: '' });
    const bytes = readFileSync(file);
    const count = bytes.readUInt32LE(80);
    expect(bytes.length).toBe(84 + 50 * count);
    const corners = new Map<string, number>();
    const positions: number[] = [];
    const triangles = new Uint32Array(3 * count);
    for (let t = 0; t < count; t++) {
      for (let corner = 0; corner < 3; corner++) {
        const point = [0, 1, 2].map((axis) => bytes.readFloatLE(84 + 50 * t + 12 + 12 * corner + 4 * axis));
        const key = point.join();
        if (!corners.has(key)) {
          corners.set(key, corners.size);
          positions.push(...point);
        }
        triangles[3 * t + corner] = corners.get(key)!;
      }
    }
    const k = await kernel();
    const mesh = {
      positions: Float64Array.from(positions),
      triangles,
      normals: new Float64Array(),
      patches: new Uint8Array(),
      chordError: 0,
    };
    const outside = outsideOf(k, mesh);
    const result = JSON.parse((await called(['plan', job, '--json'])).out) as ReturnType<typeof publishedOf>;
    for (const chamber of result.chambers.filter((_, i) => i % 7 === 0)) {
      const { face } = result.rows.find((row) => row.id === chamber.row)!;
      const solid = solidOfChamber(k, face, chamber.profile, chamber.depth);
      const least = Math.min(chamber.wall.deck, chamber.wall.bottom, chamber.wall.rail);
      expect(Math.abs(outside.gap(solid, 60) - least), chamber.id).toBeLessThan(0.101);
      solid.delete();
    }
    outside.free();
  });
});

describe('papers', () => {
  test('are refused where the cutter does not come through, and the cutter that would do is named', () => {
    const [dir, out] = [folder(), folder()];
    const text = readFileSync(sample('tarn-rescue'), 'utf8').replace(
      'chambers:',
      'routing: {cutterLength: 1 1/2 in}\n\nchambers:',
    );
    writeFileSync(join(dir, 'short.yaml'), text);
    const { code, err } = chamberwright(['papers', join(dir, 'short.yaml'), '-o', out]);
    expect(code).toBe(1);
    // The piece is 4 in thick and guides are cut from 1/2 in.
    expect(err).toMatch(/^C1: the cutter does not reach .*there is 1 1\/2 in, 4 1\/2 in are needed/m);
    expect(readdirSync(out)).toEqual([]);
  });

  test('writes the set, every sheet as SVG and DXF, and the list, whatever the job is called', () => {
    const [dir, out] = [folder(), folder()];
    const text = readFileSync(sample('mere-prone'), 'utf8').replace(/^job:.*$/m, `job: 'A & B <"c"> č ≥ ½'`);
    writeFileSync(join(dir, 'named.yaml'), text);
    const { code, err } = chamberwright(['papers', join(dir, 'named.yaml'), '-o', out, '--date', '2026-05-01']);
    expect(err).toBe('');
    expect(code).toBe(0);
    const files = readdirSync(out);
    expect(files).toContain('papers.pdf');
    expect(files).toContain('tracking.csv');
    expect(files.filter((name) => name.endsWith('.svg')).length).toBeGreaterThan(3);
    expect(files.filter((name) => name.startsWith('.'))).toEqual(['.chamberwright.json']);
    expect(statSync(join(out, 'papers.pdf')).size).toBeGreaterThan(100_000);
  });

  test('writes the same bytes for the same job and date', () => {
    const outs = [folder(), folder()];
    for (const out of outs)
      chamberwright(['papers', sample('fell-short'), '-o', out, '--date', '2026-05-01', '--only', 'face-R1,tracking']);
    const [a, b] = outs.map((out) => readFileSync(join(out, 'papers.pdf')));
    expect(a!.equals(b!)).toBe(true);
  });

  test('of some papers writes the files of those papers too, and no others', () => {
    const out = folder();
    const { code } = chamberwright(['papers', sample('fell-short'), '-o', out, '--only', 'face-R1,tracking']);
    expect(code).toBe(0);
    const files = readdirSync(out).filter((name) => !name.startsWith('.'));
    expect(files.sort()).toEqual(['face-R1_mm.dxf', 'face-R1_mm.svg', 'papers.pdf', 'tracking.csv']);
  });

  test('say what they take before anything is written', () => {
    const { code, out, err } = chamberwright([
      'papers',
      sample('fell-short'),
      '--dry',
      '--without',
      'face',
      '--with',
      'tape',
    ]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^papers\.pdf: \d+ pages for A4$/m);
    expect(out).toMatch(/^ +\d+ {2}Story pole, joined by \d+ mm of tape$/m);
    expect(out).toMatch(/^ +1 {2}Tape positions$/m);
    expect(out).not.toMatch(/^ +\d+ {2}Face sheets/m);
    expect(out).toMatch(/^Not made; add by --with: .*face-R1/m);
    expect(out).toMatch(/^Nothing was written\.$/m);
    expect(chamberwright(['papers', sample('fell-short')]).err).toMatch(
      /^-o: it is not said where to → name a folder with -o/,
    );
  });

  test('lists the papers there are when a name is wrong', () => {
    const { code, err } = chamberwright(['papers', sample('fell-short'), '-o', folder(), '--only', 'face-R9']);
    expect(code).toBe(2);
    expect(err).toMatch(/there are no papers face-R9 → among cover, check/);
  });
});

describe('what is not right is said, ends with 2 and writes nothing', () => {
  const bad = (text: string) => {
    const file = join(folder(), 'bad.yaml');
    writeFileSync(file, text);
    return file;
  };
  const refused = (file: string) => {
    const out = join(folder(), 'out');
    const { code, err } = chamberwright(['papers', file, '-o', out]);
    expect(code).toBe(2);
    expect(readdirSync(join(out, '..')).flatMap((name) => readdirSync(join(out, '..', name)))).toEqual([]);
    return err;
  };

  test('a mistake is given with file, line, what is wrong and what would be right; all of them at once', () => {
    const text = readFileSync(sample('mere-prone'), 'utf8')
      .replace(/^ {2}pitch:.*$/m, '  pich: 300 mm')
      .replace(/^ {2}web:.*$/m, '  web: 20 furlongs');
    const file = bad(text);
    const err = refused(file);
    expect(err).toMatch(/bad\.yaml:\d+:\d+: chambers.*pich.*→.*pitch/);
    expect(err).toMatch(/bad\.yaml:\d+:\d+: chambers\.web.*furlongs.*→/);
  });

  test.each([
    ['an empty file', ''],
    ['a file that is not YAML', ': : : {['],
    ['a list', '- 1\n- 2\n'],
  ])('%s', (_, text) => {
    expect(refused(bad(text))).toMatch(/bad\.yaml(:\d+)?/);
  });

  test('10 MB of noise', () => {
    const noise = Buffer.alloc(10_000_000);
    for (let i = 0; i < noise.length; i++) noise[i] = (i * 2654435761) >>> 13;
    const file = join(folder(), 'bad.yaml');
    writeFileSync(file, noise);
    expect(refused(file)).toMatch(/bad\.yaml/);
  });

  test('a table of offsets that is missing', () => {
    expect(refused(bad(readFileSync(sample('fell-short'), 'utf8').replace('fell-short.csv', 'gone.csv')))).toMatch(
      /gone\.csv/,
    );
  });

  test('a file that is not there, and a folder that cannot be made, before any work', () => {
    expect(chamberwright(['plan', 'no-such.yaml'])).toMatchObject({ code: 2, out: '' });
    const file = join(folder(), 'file');
    writeFileSync(file, '');
    const { code, err } = chamberwright(['papers', sample('fell-short'), '-o', join(file, 'out')]);
    expect(code).toBe(2);
    expect(err).toContain('choose a folder that can be written to');
  });

  test('a command, an option, a paper or a date that is unknown', () => {
    const out = folder();
    expect(chamberwright(['plna', 'x'])).toMatchObject({ code: 2 });
    expect(chamberwright(['plan', sample('fell-short'), '--jsno'])).toMatchObject({ code: 2 });
    expect(chamberwright(['papers', sample('fell-short'), '-o', out, '--paper', 'A9']).err).toMatch(
      /there is no paper A9 → one of/,
    );
    expect(chamberwright(['papers', sample('fell-short'), '-o', out, '--date', 'never']).err).toMatch(
      /is no day of the calendar/,
    );
    expect(chamberwright(['papers', sample('fell-short'), '-o', out, '--track-at', 'shed']).err).toMatch(
      /--track-at: shed is no address/,
    );
    expect(readdirSync(out)).toEqual([]);
  });
});

describe('track', () => {
  test('records a step of a block, shows it, and the papers tick it', () => {
    const dir = folder();
    const file = join(dir, 'fell-short.yaml');
    for (const name of ['fell-short.yaml', 'fell-short.csv'])
      writeFileSync(join(dir, name), readFileSync(join('samples', name)));
    const { id } = planOf(sampleJob('fell-short')).blocks[0]!;
    expect(chamberwright(['track', file, id, 'cut'])).toMatchObject({ code: 0, err: '' });
    expect(chamberwright(['track', file, id]).out).toMatch(/cut/);
    const out = folder();
    expect(chamberwright(['papers', file, '-o', out]).code).toBe(0);
    const list = readFileSync(join(out, 'tracking.csv'), 'utf8').replace(/^\uFEFF/, '');
    const { data } = Papa.parse<Record<string, string>>(list, { header: true });
    expect(data.filter(({ cut }) => cut === 'x').map(({ Block }) => Block)).toEqual([id]);
  });
});

describe('new', () => {
  test('begins a job that plans as it is, and never writes over one', () => {
    const dir = folder();
    mkdirSync(join(dir, 'in'));
    const file = join(dir, 'in', 'mine.yaml');
    expect(chamberwright(['new', file]).code).toBe(0);
    expect(chamberwright(['check', file])).toMatchObject({ code: 0, err: '' });
    writeFileSync(file, 'mine');
    expect(chamberwright(['new', file]).code).toBe(2);
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });
});

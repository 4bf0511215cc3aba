import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileBytes } from '../../src/disk/textFile.js';
import type { ShopServer } from '../../src/shop/server/shopServer.js';
import { trackCommand, type TrackCall } from '../../src/shop/track.js';
import type { TrackedBlock } from '../../src/shop/log/trackedBlock.js';
import { box, rescueBlocks } from './rescueBoard.js';
import { scratchFolder } from './store/scratch.js';

const folder = scratchFolder();

async function track(
  job: string,
  args: readonly string[],
  { blocks = rescueBlocks(), ...part }: Partial<TrackCall> & { readonly blocks?: readonly TrackedBlock[] } = {},
) {
  const said = { out: [] as string[], err: [] as string[] };
  const code = await trackCommand(args, {
    jobFile: join(folder, `${job}.yaml`),
    job: 'Rescue board 12',
    units: 'mm',
    plan: () => Promise.resolve(blocks),
    pageFolder: folder,
    out: (line) => said.out.push(line),
    err: (line) => said.err.push(line),
    readBytes: (file) => fileBytes(join(folder, file)),
    writeList: async (file, text) => {
      writeFileSync(join(folder, file), text);
      return true;
    },
    isTerminal: false,
    stopped: Promise.resolve(),
    ...part,
  });
  return { code, out: said.out.join('\n'), err: said.err.join('\n') };
}

describe('chamberwright track', () => {
  it('records a step, says where the block stands, and takes it back', async () => {
    const cut = await track('set', ['r2-07', 'cut', '--who', 'Ada', '--note', 'tight']);
    expect(cut.code).toBe(0);
    expect(cut.out).toMatch(
      /^R2-07: 180 × \d+ × 45 mm\n {2}marked {5}done\n {2}cut {8}\d{4}-\d\d-\d\d \d\d:\d\d \S+ Ada\n[\s\S]*note: tight \(Ada\)\n {2}Next: sanded\.$/,
    );
    expect((await track('set', ['R2-07'])).out).toContain('Next: sanded.');
    expect((await track('set', ['R2-07', 'cut', '--undo'])).out).toContain('Next: marked.');
  });

  it('plans a job only where the tracker does not know its plan: after any change of job or program, and where another plan came since', async () => {
    let planned = 0;
    const call = (planMark: string, length: number) => {
      const plan = () => {
        planned++;
        return Promise.resolve([box('R2-07', length, 100, 45)]);
      };
      return track('known', ['R2-07'], { plan, planMark });
    };
    const sizes = async (planMark: string, length: number) =>
      /R2-07: (\d+) ×/.exec((await call(planMark, length)).out)?.[1];
    expect(await sizes('one', 180)).toBe('180');
    expect(await sizes('one', 180)).toBe('180');
    expect(planned).toBe(1);
    expect(await sizes('two', 170)).toBe('170');
    expect(await sizes('two', 170)).toBe('170');
    expect(planned).toBe(2);
    // Back to the first: it is not the newest any more.
    expect(await sizes('one', 180)).toBe('180');
    expect(planned).toBe(3);
    // A program that does not say what it is plans every time.
    const silent = () => track('known', ['R2-07'], { blocks: [box('R2-07', 160, 100, 45)] });
    expect((await silent()).out).toContain('160 ×');
    expect(await sizes('one', 180), 'somebody else recorded another since').toBe('180');
    expect(planned).toBe(4);
  });

  it('shows the board row by row', async () => {
    await track('show', ['L3-01', 'L3-02', 'glued']);
    const { code, out } = await track('show', []);
    expect(code).toBe(0);
    expect(out).toContain('Rescue board 12: 2 of 105 blocks glued, 10 of 525 steps done');
    expect(out).toMatch(/^L3 +16 +2 +2 +2 +2 +2$/m);
    expect(out).toMatch(/^R3 +16 +0 +0 +0 +0 +0$/m);
  });

  it('says what a changed plan asks of the blocks in hand, in inches where the job has inches', async () => {
    const plan = (length: number) => ({ blocks: [box('R2-07', length, 100, 45)], units: 'in' as const });
    await track('changed', ['R2-07', 'cut'], plan(180));
    expect((await track('changed', [], plan(174))).out).toContain(
      'R2-07: trim it to 6 13/16 × 3 7/8 × 1 3/4 in (1/4 in off the length).',
    );
    expect((await track('changed', [], plan(190))).out).toContain(
      'R2-07: make it new, 7 7/16 × 3 7/8 × 1 3/4 in: the old one is 3/8 in short in length.',
    );
  });

  it('refuses steps for a block that must be made new, and is told when it was', async () => {
    const plan = (length: number) => ({ blocks: [box('R2-07', length, 100, 45)] });
    await track('renewed', ['R2-07', 'sanded'], plan(180));
    const refused = await track('renewed', ['R2-07', 'dry-fitted'], plan(190));
    expect(refused.code).toBe(2);
    expect(refused.err).toBe(
      'R2-07: make it new, 190 × 100 × 45 mm: the old one is 10 mm short in length. It serves in no other open place. ' +
        'Then: track JOB R2-07 made-new\nNothing was recorded.',
    );
    expect((await track('renewed', [], plan(190))).out).toContain('0 of 1 blocks glued, 0 of 5 steps done');
    expect((await track('renewed', ['R2-07', 'trimmed'], plan(190))).code).toBe(2);
    expect((await track('renewed', ['R2-07', 'made-new'], plan(190))).out).toContain('Next: sanded.');
    expect((await track('renewed', ['R2-07', 'trimmed'], plan(170))).out).toContain('Next: sanded.');
    const whole = await track('renewed', [], plan(170));
    expect([whole.code, whole.out]).toEqual([0, expect.stringContaining('2 of 5 steps done')]);
    expect((await track('renewed', ['R2-07', 'made-new'], plan(170))).err).toContain(
      'it fits the plan, or nothing is recorded about it yet → leave made-new out',
    );
  });

  it('writes the list and reads it into another tracker', async () => {
    await track('one', ['R2-07', 'sanded']);
    expect((await track('one', ['export', 'list.csv'])).out).toBe('105 blocks written to list.csv');
    expect((await track('other', ['import', 'list.csv'])).out).toBe('3 entries taken over from list.csv');
    expect((await track('other', ['import', 'list.csv'])).out).toBe('0 entries taken over from list.csv');
    expect((await track('other', ['R2-07'])).out).toContain('Next: dry-fitted.');
  });

  it('takes nothing over from a list that is not clear, and names the line', async () => {
    writeFileSync(join(folder, 'bad.csv'), 'block,marked,cut,sanded,dry-fitted,glued\nR2-07,x,,,,\nR9-99,x,,,,\n');
    const { code, err } = await track('bad', ['import', 'bad.csv']);
    expect(code).toBe(2);
    expect(err).toContain(
      'bad.csv:3: block “R9-99” is not in the plan → block numbers look like L3-01\nNothing was taken over.',
    );
    expect((await track('bad', [])).out).toContain('0 of 525 steps');
    expect((await track('bad', ['import', 'nowhere.csv'])).err).toBe(
      'nowhere.csv: there is no such file or folder → name the list',
    );
  });

  it.each([
    [
      ['R9-99', 'cut'],
      'R9-99: not a block of this plan → numbers look like L3-01; the rows are L3, L2, L1, R1, R2, R3; steps: marked, cut, sanded, dry-fitted, glued',
    ],
    [['R2-07', 'painted'], 'painted: not a block of this plan → '],
    [['cut'], 'cut: it is not said of which block → track JOB L3-01 cut'],
    [['R2-07', '--undo'], '--undo: it needs the step to undo → marked, cut, sanded, dry-fitted, glued'],
    [['import'], 'import: it needs one file → track JOB import FILE.csv'],
    [['serve', '--port', '80'], '--port: 80 is no such number → a number from 1024 to 65535'],
    [['R2-07', '--colour', 'red'], '--colour: there is no such option → one of --undo, --who, --note, --share, --port'],
  ])('does not guess at %s', async (args, said) => {
    const { code, err } = await track('wrong', args);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(err).toContain('chamberwright track JOB');
  });

  it('records nothing of a note with control characters in it', async () => {
    const { code, err } = await track('odd-note', ['R2-07', 'R2-08', 'cut', '--note', 'a\u001b[2J']);
    expect(code).toBe(2);
    expect(err).toContain('R2-07, note: what.text: control characters are not taken');
    expect((await track('odd-note', [])).out).toContain('0 of 525 steps');
  });

  it('serves until it is stopped, and writes no key and no code where nobody reads them', async () => {
    let served: ShopServer | undefined;
    const { code, out, err } = await track('serve', ['serve'], { running: (server) => (served = server) });
    expect(code).toBe(0);
    expect(out).toContain('Its key is shown only in a terminal.');
    expect(out + err).not.toContain(served!.ownerLink.split('#token=')[1]);
    const shown = await track('serve', ['serve'], { isTerminal: true, running: (server) => (served = server) });
    expect(shown.out).toContain(served!.ownerLink);
  });

  it('says what is wrong with an address to share at', async () => {
    const { code, err } = await track('share', ['serve', '--share', '8.8.8.8']);
    expect(code).toBe(2);
    expect(err).toMatch(
      /8\.8\.8\.8: this is not an address of this machine in a home network → one of its addresses: /,
    );
  });

  it('shuts the phones out when asked', async () => {
    expect((await track('forget', ['forget-phones'])).out).toContain('0 phones shut out.');
  });
});

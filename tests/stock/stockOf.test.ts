import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sayFinding } from '../../src/finding/say.js';
import { planOf } from '../../src/plan.js';
import { readText } from '../job/readSample.js';

const sample = readFileSync('samples/beck-guard.yaml', 'utf8');
const planned = (change: (text: string) => string = (text) => text) => {
  const { job, findings } = readText(change(sample));
  expect(findings).toEqual([]);
  return planOf(job!);
};

describe('the sample whose blank is too small in one place', () => {
  const plan = planned();

  // By hand: at 1130 mm from its nose the blank is 112 mm thick, the board that lies there about 109 mm, so that less
  // than twice 2 mm are left; elsewhere the blank is 14 mm thicker than the board and more.
  it('is short on deck and bottom where its deck sags, nowhere else, and its chambers are planned all the same', () => {
    const { short, least } = plan.stock!.blank!;
    expect(short.length).toBeGreaterThan(0);
    for (const { side, at } of short) {
      expect(['deck', 'bottom']).toContain(side);
      expect(at[0]).toBeGreaterThan(700);
      expect(at[0]).toBeLessThan(1500);
    }
    for (const { side, over } of least) if (side === 'right rail') expect(over).toBeGreaterThan(2);
    expect(plan.chambers.length).toBeGreaterThan(40);
    expect(plan.doubts.filter(({ where: { path } }) => path === 'stock.blank').map(sayFinding)[0]).toMatch(
      /of MR\d and ML\d: .* of foam over the finished board where 2 mm are asked, least at 1\d\d\d/,
    );
  });

  // Closed form: what the place is short of is added to the thickness of the blank there, half of it for each face.
  it('is short nowhere where the blank does not sag', () => {
    const thick = planned((text) => text.replace('bottom: 9, thick: 112', 'bottom: 5, thick: 125'));
    expect(thick.stock!.blank!.short).toEqual([]);
    expect(thick.doubts).toEqual([]);
  });

  it('is measured where the builder lays it, and no better than where it is found to lie best', () => {
    const laid = planned((text) =>
      text.replace('    kerf: 3\n', '    kerf: 3\n    place: {along: 60, up: 4, noseUp: 0}\n'),
    );
    const best = Math.min(...plan.stock!.blank!.least.map(({ over }) => over));
    const there = Math.min(...laid.stock!.blank!.least.map(({ over }) => over));
    expect(laid.stock!.blank!.fits[0]!.placement).toEqual({ along: 60, up: 4, noseUp: 0 });
    expect(there).toBeLessThanOrEqual(best + 0.01);
  });

  it('leaves each strip at least as much where the strips may be slid', () => {
    const slid = planned((text) => text.replace('    kerf: 3\n', '    kerf: 3\n    slide: true\n'));
    const least = (of: typeof plan) => Math.min(...of.stock!.blank!.least.map(({ over }) => over));
    expect(least(slid)).toBeGreaterThanOrEqual(least(plan) - 0.02);
    expect(slid.stock!.blank!.fits.length).toBe(3);
  });

  it('says what is lacking where the lumber gives out, is too narrow, or is none', () => {
    const told = (change: (text: string) => string) =>
      planned(change)
        .doubts.filter(({ where: { path } }) => path === 'stock.lumber')
        .map(({ what }) => what);
    const [one, two, ...more] = told((text) =>
      text.replace('thickness: 22, length: 3100, count: 2', 'thickness: 22, length: 3100, count: 0'),
    );
    expect(one).toMatch(
      /^ML3: the paulownia that is listed is used up: 0 of 2 parts come from it; this one takes 8 mm × \d/,
    );
    expect(two).toMatch(/^MR3: /);
    expect(more).toEqual([]);
    expect(told((text) => text.replace('width: 250, thickness: 22', 'width: 100, thickness: 22'))[0]).toMatch(
      /^ML3: needs paulownia .* wide however it is turned, the widest long enough has 100 mm$/,
    );
    expect(told((text) => text.replace('{wood: paulownia', '{wood: basswood'))).toEqual([
      'ML3: no paulownia is listed',
      'MR3: no paulownia is listed',
      'basswood is listed, and no stringer is of it',
    ]);
  });

  it('of billets has every strip in the list once', () => {
    const billets = 'stock:\n  billets:\n    - {foam: pu-blank, length: 3000, width: 600, thickness: 200, price: 90}\n';
    const { stock } = planned((text) => text.slice(0, text.indexOf('stock:\n')) + billets);
    const names = stock!.billets!.planks.flatMap(({ leaves }) => leaves.flat().map(({ laid }) => laid.part.name));
    expect(stock!.billets!.lacks).toEqual([]);
    expect(names.sort()).toEqual(['ML1', 'ML2', 'ML4', 'MR1', 'MR2', 'MR4']);
  });

  it('changes nothing in a plan made over another', () => {
    expect(planOf(plan.job, plan).stock).toEqual(plan.stock);
  });

  // By hand: 2970 − 170 mm is 104 mm less than the board's 2900 and twice the 2 mm that are asked.
  it('shorter than the board is told by how much, and its chambers are planned all the same', () => {
    const found = planned((text) =>
      text
        .replace('    length: 2970', '    length: 2800')
        .replace('      - [2870, 184]\n', '')
        .replace('      - {at: 2820, bottom: 43, thick: 72}\n', ''),
    );
    const told = found.doubts.map(sayFinding);
    expect(told[0]).toMatch(
      /^stock.blank: the blank is 2800 mm long, the board .* 2904 mm: 104 mm too short → a blank of the same shape that is .*104 mm longer, in which nothing is short; or a board shorter by 104 mm$/,
    );
    expect(told.filter((each) => /^stock.blank: (nose|tail) of/.test(each)).length).toBeGreaterThan(0);
    expect(found.chambers.length).toBe(plan.chambers.length);
  });

  // By hand: the outer strip is sawn 75 + 65 mm and two and a half kerfs of 3 mm from the blank's centreline, 147.5 mm,
  // so a blank 120 mm wide on each side ends 27.5 mm before it.
  it('of which a strip gets nothing is told by how much', () => {
    const narrow = planned((text) => {
      const [before, after] = text.split('stock:\n') as [string, string];
      const half = after.replace(
        /^ {6}- \[(\d+), (\d+)\]$/gm,
        (_, x, y) => `      - [${x}, ${Math.min(120, Number(y))}]`,
      );
      return `${before}stock:\n${half.replace('tail: {square: 146}', 'tail: {square: 100}')}`;
    });
    const { unfit } = narrow.stock!.blank!;
    expect(unfit[0]).toEqual({ why: 'narrower', needs: 578, has: expect.closeTo(253, 6) });
    expect(unfit.slice(1)).toEqual([{ why: 'beyond', strip: 'MR4', by: expect.closeTo(27.5, 6) }]);
    expect(narrow.doubts.map(sayFinding)[1]).toMatch(
      /^stock.blank: MR4 would be sawn where there is no blank: .* \d+(\.\d)? mm outside/,
    );
    expect(narrow.chambers.length).toBe(plan.chambers.length);
  });

  // Planks of 100 mm make no stringer of 8 mm, whose scarfs of 1 in 12 are 96 mm long.
  it('of planks hardly longer than a scarf is one lack a stringer, not hundreds', () => {
    const told = planned((text) => text.replace('thickness: 22, length: 3100', 'thickness: 22, length: 100')).doubts;
    expect(told.filter(({ where: { path } }) => path === 'stock.lumber').map(({ what }) => what)).toEqual([
      expect.stringMatching(/^ML3: needs paulownia .* long, the longest listed has 100 mm$/),
      expect.stringMatching(/^MR3: /),
    ]);
  });

  it('of billets that no strip is of, and of too few of them, is told', () => {
    const billets = (of: string) =>
      planned((text) => text.slice(0, text.indexOf('stock:\n')) + `stock:\n  billets:\n${of}`);
    const none = billets('    - {foam: eps-15, length: 3000, width: 600, thickness: 200}\n').doubts.map(
      ({ what }) => what,
    );
    expect(none.filter((each) => each.endsWith('no pu-blank is listed'))).toHaveLength(6);
    expect(none.at(-1)).toBe('eps-15 is listed, and no strip is of it');
    const few = billets('    - {foam: pu-blank, length: 3000, width: 300, thickness: 80, count: 1}\n').doubts.map(
      ({ what }) => what,
    );
    expect(few.some((each) => /is used up: \d of \d parts come from it/.test(each))).toBe(true);
  });
});

describe('strips that the builder slides or saws elsewhere', () => {
  const withStrips = (strips: string) =>
    planned((text) => text.replace('    kerf: 3\n', `    kerf: 3\n    strips: [${strips}]\n`));

  // By hand: the second strip is sawn 5 mm further out than side by side, which is 75 + 1.5 + 3 mm from the centreline.
  it('are sawn where they are said to be, left and right, and those beyond them next to them', () => {
    const usual = planned().stock!.blank!;
    const { strips, width } = withStrips('{strip: MR2, sawnAt: 84.5}').stock!.blank!;
    const at = (name: string, of = strips) => of.find(({ member }) => member.id === name)!;
    expect(at('MR2', usual.strips).left!.at).toBeCloseTo(79.5, 9);
    expect(at('MR2').left!.at).toBe(84.5);
    expect(at('ML2').right!.at).toBe(-84.5);
    expect(at('MR4').left!.at).toBeCloseTo(at('MR4', usual.strips).left!.at + 5, 9);
    expect(width.glued).toBeCloseTo(usual.width.glued - 10, 9);
  });

  it('that are sawn into each other, or are none, are told', () => {
    const told = withStrips('{strip: MR2, sawnAt: 70}, {strip: MR9, up: 1}').doubts.map(sayFinding);
    expect(told[0]).toBe(
      'stock.blank.strips: no strip of this glue-up is called MR9 → one of ML4, ML2, ML1, MR1, MR2, MR4',
    );
    expect(told[1]).toBe(
      'stock.blank.strips: MR2 and MR1 are sawn 9.5 mm into each other at 0 mm from the nose, the saw cut between them included → saw MR2 further out by 9.5 mm',
    );
  });

  it('lie as they are slid against the others, which lie as they do without them', () => {
    const slid = withStrips('{strip: MR2, up: 1}').stock!.blank!;
    expect(slid.fits.map(({ of }) => of)).toEqual([
      ['ML4', 'ML1', 'MR1', 'MR4'],
      ['ML2', 'MR2'],
    ]);
    expect(slid.fits[1]!.placement.up).toBeCloseTo(slid.fits[0]!.placement.up - 1, 3);
  });
});

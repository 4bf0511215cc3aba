import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { readText } from '../readSample.js';

const sample = readFileSync('samples/beck-guard.yaml', 'utf8');
const found = (from: string, to: string) => {
  expect(sample).toContain(from);
  return readText(sample.replace(from, to)).findings.map(({ where, what, remedy }) => [where.path, what, remedy]);
};

describe('the stock in a job', () => {
  it('is read with the dressed sizes and board feet of its lumber', () => {
    const { job, findings } = readText(sample);
    expect(findings).toEqual([]);
    const { lumber, blank } = job!.stock!;
    expect(blank!.shape.length).toBe(2970);
    // PS 20: 1 x 10 is dressed to 3/4 by 9 1/4 in; ten feet of it are 8 1/3 board feet, told and sold as 8.33.
    expect(lumber[0]!.thickness).toBeCloseTo(19.05, 9);
    expect(lumber[0]!.width).toBeCloseTo(9.25 * 25.4, 9);
    expect(lumber[0]!.boardFeet).toBe(8.33);
    expect(lumber[0]!.price).toBeCloseTo(9.5 * 8.33, 2);
    expect(lumber[2]!.price).toBe(38);
  });

  it('is said to be wrong where it is, with what would be right', () => {
    expect(found('nominal: 1x10', 'nominal: 1x13')).toEqual([
      [
        'stock.lumber[0].nominal',
        '"1x13" is no nominal size',
        'thickness x width in inches, like 1x8 or 5/4x6: 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 4.5 thick, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16 wide',
      ],
    ]);
    expect(found('width: 250, thickness: 22, length', 'width: 250, length')).toEqual([
      ['stock.lumber[2]', 'this lumber has no thickness', 'add it, or its nominal size: nominal: 1x8'],
    ]);
    expect(found('nominal: 1x8,', 'nominal: 1x8, price: 20,')).toEqual([
      ['stock.lumber[1].perBoardFoot', 'it has a price by the piece and one by the board foot', 'keep one of them'],
    ]);
    const both = found(
      '  lumber:',
      '  billets: [{foam: pu-blank, length: 3000, width: 300, thickness: 150}]\n  lumber:',
    );
    expect(both).toEqual([
      ['stock.billets', 'the strips come from a moulded blank and from billets', 'keep one of them'],
    ]);
    expect(found('{wood: paulownia, width', '{wood: paulonia, width')[0]![0]).toBe('stock.lumber[2].wood');
  });

  // The same table as that of a sample's board: blank and board are read by the same rules.
  it('may be a table of offsets for the blank', () => {
    const other = readFileSync('samples/fell-short.yaml', 'utf8');
    const board = /^board:\n((?: .*\n|\n)*)/m.exec(other)![1]!;
    const blank = board.replace(/^/gm, '  ');
    const text = sample.slice(0, sample.indexOf('stock:\n')) + `stock:\n  blank:\n${blank}`;
    const { job, findings } = readText(text);
    expect(findings).toEqual([]);
    expect(job!.stock!.blank!.shape).toEqual(readText(other).job!.board);
    expect(readText(text.replace('fell-short.csv', 'none.csv')).findings.map(({ where }) => where.path)).toEqual([
      'stock.blank.offsets',
    ]);
  });

  it('may have strips that are sawn elsewhere or slid', () => {
    const strips = '    kerf: 3\n    strips: [{strip: MR2, up: 1}, {strip: ML4, sawnAt: 150}]\n';
    expect(readText(sample.replace('    kerf: 3\n', strips)).job!.stock!.blank!.strips).toEqual([
      { strip: 'MR2', slid: { along: 0, up: 1, noseUp: 0 } },
      { strip: 'ML4', sawnAt: 150 },
    ]);
  });
});

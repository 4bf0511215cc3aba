import { describe, expect, it } from 'vitest';
import { LONGEST_PAGE_MM, POINTS_PER_MM, rollOf, sheetNamed, sheets } from '../../../src/print/paper/paper.js';

describe('paper', () => {
  it('has the A sizes of ISO 216: halved long sides, rounded down, from 841 by 1189 mm', () => {
    let [short, long] = [841, 1189];
    for (const name of ['A0', 'A1', 'A2', 'A3', 'A4']) {
      expect(sheetNamed(name)).toMatchObject({ width: short, height: long });
      [short, long] = [Math.floor(long / 2), short];
    }
  });

  it('has the sizes of ASME Y14.1, US legal and the architectural sheets, in inches', () => {
    const inches: Record<string, [number, number]> = {
      'ANSI A': [8.5, 11],
      Letter: [8.5, 11],
      'ANSI B': [11, 17],
      'ANSI C': [17, 22],
      'ANSI D': [22, 34],
      'ANSI E': [34, 44],
      Legal: [8.5, 14],
      'Arch A': [9, 12],
      'Arch B': [12, 18],
      'Arch C': [18, 24],
      'Arch D': [24, 36],
      'Arch E': [36, 48],
    };
    for (const [name, [width, height]] of Object.entries(inches)) {
      const sheet = sheetNamed(name)!;
      expect(sheet.width).toBeCloseTo(width * 25.4, 9);
      expect(sheet.height).toBeCloseTo(height * 25.4, 9);
    }
  });

  it('finds a sheet however its name is written, and none that it does not have', () => {
    expect(sheetNamed(' ansi_b')?.name).toBe('ANSI B');
    expect(sheetNamed('A5')).toBeUndefined();
    expect(rollOf(914.4)).toEqual({ kind: 'roll', name: 'roll 914.4 mm', width: 914.4 });
  });

  it('gives every sheet upright, with the standard it comes from', () => {
    for (const sheet of sheets) {
      expect(sheet.width).toBeLessThan(sheet.height);
      expect(sheet.standard).not.toBe('');
    }
  });

  it('takes 72 PDF units to the inch and 14,400 to the page (ISO 32000-1, 8.3.2.3 and Annex C)', () => {
    expect(POINTS_PER_MM).toBeCloseTo(2.834645669, 9);
    expect(LONGEST_PAGE_MM).toBeCloseTo(5080, 9);
  });
});

import { describe, expect, it } from 'vitest';
import { dayOrder, readDate } from '../../../src/shop/list/listDate.js';

const at = (cell: string, order: Parameters<typeof readDate>[1] = 'unknown') => {
  const date = readDate(cell, order);
  return date?.kind === 'date' ? new Date(date.at) : date?.kind;
};
const fourteenth = (...time: [hour?: number, minute?: number, second?: number]) =>
  time.length === 0 ? new Date(2026, 2, 14, 12) : new Date(2026, 2, 14, ...(time as [number]));

describe('dates as spreadsheets write them', () => {
  it('ISO 8601, with and without time and zone', () => {
    expect(at('2026-03-14')).toEqual(fourteenth());
    expect(at('2026-03-14 13:05')).toEqual(fourteenth(13, 5));
    expect(at('2026-03-14T12:00:00.000Z')).toEqual(new Date(Date.UTC(2026, 2, 14, 12)));
    expect(at('2026-03-14T12:00:00+05:30')).toEqual(new Date(Date.UTC(2026, 2, 14, 6, 30)));
    expect(at('2026/3/14')).toEqual(fourteenth());
  });

  it('by points, by slashes, by the name of the month, with am and pm', () => {
    for (const cell of ['14.3.2026', '14.03.26', '14. 3. 2026', '14-Mar-26', '14 March 2026', 'March 14, 2026'])
      expect(at(cell), cell).toEqual(fourteenth());
    expect(at('14/03/2026', 'day first')).toEqual(fourteenth());
    expect(at('3/14/2026 1:05 PM', 'month first')).toEqual(fourteenth(13, 5));
    expect(at('3/14/26 12:10 am', 'month first')).toEqual(fourteenth(0, 10));
  });

  // ISO/IEC 29500-1, 18.17.4.1: day 1 is 1 January 1900; 46095 is 14 March 2026.
  it('as the number of days that a spreadsheet keeps', () => {
    expect(at('46095')).toEqual(fourteenth());
    expect(at('46095.25')).toEqual(fourteenth(6));
  });

  it('day or month first is told by the other dates of the list, or asked', () => {
    expect(dayOrder(['3/4/2026', '14/3/2026'])).toBe('day first');
    expect(dayOrder(['3/4/2026', '3/14/2026'])).toBe('month first');
    expect(dayOrder(['3/4/2026'])).toBe('unknown');
    expect(at('3/4/2026')).toBe('either way');
    expect(at('3/3/2026')).toEqual(new Date(2026, 2, 3, 12));
  });

  it('no day of the calendar is no date, and a word is none at all', () => {
    expect(at('2026-02-30')).toBe('none such');
    expect(at('14.13.2026')).toBe('none such');
    expect(at('Ada')).toBeUndefined();
    expect(readDate('14.3.2026 (Ada)', 'unknown')).toMatchObject({ rest: 'Ada' });
  });
});

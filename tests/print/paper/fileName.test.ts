import { expect, it } from 'vitest';
import { cutterFileName } from '../../../src/print/paper/fileName.js';

it('has the unit in its name and nothing that a file system refuses', () => {
  const named = (id: string): string => cutterFileName({ id, title: '', notes: [], shapes: [] }, 'dxf');
  expect(named('face-R2')).toBe('face-R2_mm.dxf');
  expect(named('../A & B <"c">/č')).toBe('--A-B-c-č_mm.dxf');
});

import { expect, it } from 'vitest';
import { lengthOption } from '../../src/typed/lengthOption.js';

it('a bare number is in the units of the job, and what was understood is said in both', () => {
  expect(lengthOption('--depth-error', '1/8', 'in', 700)).toEqual({ mm: 3.175, understood: '1/8 in (3.2 mm)' });
  expect(lengthOption('--depth-error', '1.5', 'mm', 700)).toEqual({ mm: 1.5, understood: '1.5 mm (0.059 in)' });
  expect(lengthOption('--depth-error', '1.5mm', 'in', 700)).toEqual({ mm: 1.5, understood: '0.059 in (1.5 mm)' });
  expect(lengthOption('--roll', '610mm', 'in', 700)).toEqual({ mm: 610, understood: '24.016 in (610 mm)' });
});

it('a fraction in a metric job is asked about, and nothing is below zero', () => {
  expect(lengthOption('--depth-error', '1/8', 'mm', 700)).toEqual({
    where: '--depth-error',
    what: '"1/8" is a fraction of a mm, which no rule has',
    remedy: 'write 1/8 in where that is meant, or a decimal: 0.13 mm',
  });
  expect(lengthOption('--margin', '-3 mm', 'mm', 700)).toEqual({
    where: '--margin',
    what: '-3 mm is less than nothing',
    remedy: '0 or more',
  });
  expect(lengthOption('--roll', '2 lb', 'in', 700)).toEqual({
    where: '--roll',
    what: '"lb" is not a unit of a length',
    remedy: 'write 19 mm, 1.9 cm, 3/4 in or 11 ft 4 in',
  });
  expect(lengthOption('--roll', '610', 'in', 2000)).toEqual({
    where: '--roll',
    what: '610 in cannot be right',
    remedy: 'at most 78 11/16 in, or name the unit: 12 mm',
  });
});

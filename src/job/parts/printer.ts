import { z } from 'zod';
import type { Quantities } from '../quantities.js';

export function printerSchema(q: Quantities) {
  const bounds = {
    least: 0.97,
    most: 1.03,
    because: 'more than 3 % is a print setting: print at actual size and measure again',
  };
  const measured = 'measured length of the bar on the check sheet divided by its true length';
  return z
    .strictObject({
      across: q.share(`${measured}, across the sheet`, bounds),
      along: q.share(`${measured}, along the sheet`, bounds),
    })
    .meta({ description: 'what the printer makes of a true length; papers are drawn so much larger or smaller' });
}

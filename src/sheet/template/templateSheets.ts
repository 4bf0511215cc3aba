import type { Plan } from '../../plan.js';
import type { Drawing } from '../drawing.js';
import { gaugeTemplates } from './gaugeTemplates.js';
import { outlineTemplate } from './outlineTemplate.js';
import { rockerTemplate } from './rockerTemplate.js';

/**
 * What the board is shaped to, at full size: outline, rocker and cross-sections of the board as drawn; of half of it
 * where both sides are alike.
 */
export function templateSheets(plan: Plan): Drawing[] {
  const { job, board } = plan.drawn ?? plan;
  const sides = job.board.left ? (['right', 'left'] as const) : (['both'] as const);
  return [
    ...sides.map((side) => outlineTemplate(board, job, side)),
    rockerTemplate(board, job.units),
    ...sides.map((side) => gaugeTemplates(board, job.units, side)),
  ];
}

import { sayFinding } from '../../finding/say.js';
import { printWeight } from '../../length/weight.js';
import type { Plan } from '../../plan.js';
import type { Float } from '../../weigh/float.js';
import { questionedFindings } from '../../verdict/questioned.js';
import type { TextBlock, TextPage } from '../pages.js';
import { WEIGHT_WORDS } from './weightsWords.js';
import { say } from '../../words/say.js';

const W = WEIGHT_WORDS.float;

/** What went as dust, how the board floats, and the weighings that are questioned. */
export function floatPage(plan: Plan): TextPage {
  const { weights, board, job } = plan;
  const kg = (weight: number) => printWeight(weight, job.units);
  const questioned: TextBlock[] =
    weights.questioned.length === 0
      ? []
      : [
          { kind: 'heading', text: W.questionedTitle },
          { kind: 'list', items: questionedFindings(plan).map(sayFinding) },
        ];
  return {
    kind: 'text',
    title: W.title,
    blocks: [
      ...questioned,
      { kind: 'heading', text: W.dust },
      {
        kind: 'pairs',
        pairs: [
          [W.shapedOff, kg(weights.shapedOff)],
          [W.routed, kg(weights.routed)],
          [W.gone, kg(weights.gone)],
        ],
      },
      { kind: 'heading', text: W.water },
      {
        kind: 'pairs',
        pairs: [
          [W.volume, `${board.volume.toFixed(1)} l`],
          ...(['fresh', 'sea'] as const).flatMap((water): [string, string][] => [
            [W[water], say(W.carries, { weight: kg(weights.float[water].carries) })],
            ...riderLine(weights.float[water], plan),
          ]),
        ],
      },
    ],
  };
}

function riderLine({ spare, under }: Float, { job }: Plan): [string, string][] {
  if (spare === undefined || job.rider === undefined) return [];
  const values = {
    rider: printWeight(job.rider, job.units),
    spare: printWeight(Math.abs(spare), job.units),
    under: `${Math.round(under * 100)} %`,
  };
  return [['', say(spare < 0 ? W.sinks : W.rider, values)]];
}

import type { Plan } from '../../plan.js';
import type { StaggerCompared } from '../../steer/stagger.js';
import type { Steered } from '../../steer/steer.js';
import type { Cell, DocumentPage } from '../pages.js';
import { weightsChart } from './weightsChart.js';
import { floatPage } from './weightsFloat.js';
import { heelTables } from './weightsHeel.js';
import { stiffnessChart, stiffnessTable } from './weightsStiffness.js';
import { partsTable, stagesTable, unknownsTable } from './weightsTables.js';
import { targetChart, targetPage } from './weightsTarget.js';
import { partInWords, WEIGHT_WORDS } from './weightsWords.js';

/** What takes a plan or more to find, and is printed only where it was. */
export interface WeightFindings {
  readonly stagger?: StaggerCompared;
  readonly steered?: Steered;
}

/**
 * The report on weight, in the order of reading: chart, stages, what it is made of, what was supposed, float,
 * stiffness, target.
 */
export function weightPages(plan: Plan, { stagger, steered }: WeightFindings = {}): DocumentPage[] {
  const chart = weightsChart(plan);
  const pages: DocumentPage[] = [
    { kind: 'figure', title: chart.title, drawing: chart, notes: chart.notes },
    stagesTable(plan),
    partsTable(plan),
    unknownsTable(plan),
    floatPage(plan),
  ];
  if (stagger) {
    const drawing = stiffnessChart(plan, stagger);
    pages.push(
      { kind: 'figure', title: drawing.title, drawing, notes: [...drawing.notes, ...WEIGHT_WORDS.stiffness.caution] },
      stiffnessTable(plan, stagger),
    );
  }
  pages.push(...heelTables(plan));
  if (steered) {
    const drawing = targetChart(plan, steered);
    pages.push(targetPage(plan, steered), { kind: 'figure', title: drawing.title, drawing, notes: drawing.notes });
  }
  return pages;
}

/**
 * Weights by stage as rows for a list, the header first: kilograms, millimetres and kg·m², whatever the job's units,
 * then every part.
 */
export function weightRows({ weights, job }: Plan): Cell[][] {
  const ids = [...new Set(weights.stages.flatMap(({ parts }) => parts.map(({ id }) => id)))];
  const header = [
    'stage',
    'weight kg',
    'from kg',
    'to kg',
    'foreseen kg',
    'scale said kg',
    'balance mm from nose',
    'swing kg m2',
    ...ids.map((id) => `${partInWords(id)} kg`),
  ];
  const rounded = (value: number, digits: number) => Number(value.toFixed(digits));
  return [
    header,
    ...weights.stages.map(({ stage, weight, low, high, foreseen, balance, swing, parts }): Cell[] => {
      const said = (job.weighings ?? []).filter((each) => each.stage === stage).at(-1);
      return [
        WEIGHT_WORDS.stage[stage],
        ...[weight, low, high, foreseen.weight].map((kg) => rounded(kg, 4)),
        said ? rounded(said.weight, 4) : '',
        rounded(balance.x, 1),
        rounded(swing, 3),
        ...ids.map((id) => rounded(parts.find((part) => part.id === id)?.weight ?? 0, 4)),
      ];
    }),
  ];
}

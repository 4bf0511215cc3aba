import words from '../../../templates/glueUp.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import { roundedThin } from '../../length/thin.js';
import type { Plan } from '../../plan.js';
import { edgeInGlueUp, widthInGlueUp } from '../../view/memberInGlueUp.js';
import { say } from '../../words/say.js';
import type { Cell, DocumentPage, TablePage, TextPage } from '../pages.js';
import { columnsOf, row, thinCell } from '../table.js';
import { templateStations } from '../template/stations.js';
import { glueAndClamps } from './glueAndClamps.js';

/** The dry run is measured at the marks of the profiles nearest to these shares of the board's length. */
const STATIONS = [0.25, 0.5, 0.75];
/** What a tape shows of an open joint, mm. */
const OFF = { mm: 1, in: 25.4 / 16 } as const;

/** From loose members to the glued blank: dry run, glue, clamps and their order, and the cautions. */
export function glueUpPages(plan: Plan): DocumentPage[] {
  const stations = stationsOf(plan);
  const hasStock = plan.layup.joints.some((joint) => differences(plan, joint.id, stations).flat().length > 0);
  return [howTo(plan), widths(plan, stations), ...(hasStock ? [heights(plan, stations)] : []), ...glueAndClamps(plan)];
}

function stationsOf({ board, job }: Plan): number[] {
  const nearest = (x: number) =>
    templateStations(board.length, job.units).reduce((a, b) => (Math.abs(b - x) < Math.abs(a - x) ? b : a));
  return [...new Set(STATIONS.map((share) => nearest(share * board.length)))];
}

function howTo({ job }: Plan): TextPage {
  const { openTime, clampSpacing } = job.blocks.glue;
  const values = {
    off: printLength(OFF[job.units], job.units),
    spacing: printLength(clampSpacing, job.units),
    open: openTime,
  };
  const list = (steps: readonly string[]) => ({
    kind: 'list' as const,
    items: steps.map((step) => say(step, values)),
    numbered: true,
  });
  return {
    kind: 'text',
    title: words.title,
    blocks: [
      { kind: 'heading', text: words.dryRun.heading },
      list(words.dryRun.steps),
      { kind: 'heading', text: words.glue.heading },
      list(words.glue.steps),
      { kind: 'caution', ...words.caution },
    ],
  };
}

function widths(plan: Plan, stations: readonly number[]): TablePage {
  const { units } = plan.job;
  const at = (x: number) => say(words.widths.at, { x: printLength(x, units) });
  const { members } = plan.layup;
  const found = members.map((member) => stations.map((x) => widthInGlueUp(plan, member, x)));
  const cell = (mm: number | undefined): Cell => (mm === undefined ? '' : thinCell(mm, units));
  // Of the widths as they are written: who mills to them and adds them up finds this.
  const together = stations.map((_, i) =>
    found.some((each) => each[i] === undefined)
      ? undefined
      : found.reduce((sum, each) => sum + roundedThin(each[i]!, units), 0),
  );
  return {
    kind: 'table',
    title: words.widths.title,
    notes: words.widths.notes,
    columns: columnsOf(
      [words.widths.order, 'text'],
      [words.widths.member, 'text'],
      [words.widths.material, 'text'],
      ...stations.map((x) => [at(x), 'number'] as const),
    ),
    rows: [
      ...members.map(({ id, material }, m) => row(`${m + 1}`, id, material.name, ...found[m]!.map(cell))),
      row('', words.widths.together, '', ...together.map(cell)),
    ],
  };
}

/** By how much the right member stands higher than the left one, mm: the decks at the stations, then the bottoms. */
function differences(plan: Plan, jointId: string, stations: readonly number[]): number[][] {
  const { members, joints } = plan.layup;
  const joint = joints.find(({ id }) => id === jointId)!;
  const [left, right] = [members.find((m) => m.right === joint)!, members.find((m) => m.left === joint)!].map(
    (member) => edgeInGlueUp(plan, member, joint),
  );
  const at = (side: 'deck' | 'bottom') =>
    stations.flatMap((x) => {
      const [a, b] = [left?.heightsAt(x), right?.heightsAt(x)];
      return a && b ? [b[side] - a[side]] : [];
    });
  return [at('deck'), at('bottom')];
}

function heights(plan: Plan, stations: readonly number[]): TablePage {
  const { units } = plan.job;
  const { layup } = plan;
  const titles = (said: string) => stations.map((x) => [say(said, { x: printLength(x, units) }), 'number'] as const);
  return {
    kind: 'table',
    title: words.heights.title,
    notes: words.heights.notes,
    columns: columnsOf(
      [words.heights.joint, 'text'],
      [words.heights.between, 'text'],
      ...titles(words.heights.deck),
      ...titles(words.heights.bottom),
    ),
    rows: layup.joints.map((joint) => {
      const beside = layup.members.filter(({ left, right }) => left === joint || right === joint);
      const cells = differences(plan, joint.id, stations).flatMap((each) =>
        stations.map((_, i): Cell => (each.length < stations.length ? '' : thinCell(each[i]!, units))),
      );
      return row(joint.id, beside.map(({ id }) => id).join(' · '), ...cells);
    }),
  };
}

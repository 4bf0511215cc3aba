import type { Row } from '../layup/layup.js';
import type { Price, Standing } from './standing.js';

/** Which rows count, how often, and how much of them may be solid at one station. */
export interface AcrossRules {
  readonly rows: readonly Row[];
  /** They lie on the centreline and to its right, and the left is their mirror image. */
  readonly isHalf: boolean;
  /** Mm. */
  readonly length: number;
  /** Of the rows that run past a station, from their first chamber to their last, the share that may be solid there. */
  readonly share: number;
  /** Stretches along the board where all may be solid, `x` from and to, mm. */
  readonly ribs: readonly (readonly [number, number])[];
}

/** Millimetres of the board, the last one not among them, over which that many more rows are solid. */
export interface Closed {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
}

/** How many rows of the board one stands for. */
export function timesOf({ isHalf }: AcrossRules, { side }: Row): number {
  return isHalf && side !== 'C' ? 2 : 1;
}

/**
 * Counts at each millimetre of the board how many rows are solid there, and compares that with how many may be. It
 * counts into the same lists again and again: a search asks it hundreds of times.
 */
export class Stations {
  /** How many rows may be solid. */
  private readonly most: Float64Array;
  private readonly solid: Float64Array;
  /** By how many rows more are solid: how much of the board is too solid, from the nose up to each millimetre. */
  private readonly sums = new Map<number, { isNew: boolean; readonly sum: Float64Array }>();

  /** @param joints the rows beside each joint */
  constructor(
    private readonly drawn: Standing,
    joints: readonly (readonly Row[])[],
    private readonly rules: AcrossRules,
  ) {
    const count = Math.ceil(rules.length);
    const [running, least] = [new Float64Array(count), new Float64Array(count).fill(Infinity)];
    this.solid = new Float64Array(count);
    this.most = new Float64Array(count);
    this.addRuns(running, rules.rows);
    this.addWebs(this.solid, rules.rows, drawn);
    for (const rows of joints) {
      const open = new Float64Array(count);
      this.addRuns(open, rows);
      this.addWebs(open, rows, drawn, -1);
      open.forEach((more, i) => {
        if (more > 0) least[i] = Math.min(least[i]!, more);
      });
    }
    // On a board of few rows a single dot takes more than the share: one is allowed, where it takes least.
    this.solid.forEach((webs, i) => {
      const one = webs + (least[i] === Infinity ? 0 : least[i]!);
      this.most[i] = Math.max(Math.floor(rules.share * running[i]! + ROUNDING), one);
    });
    for (const [from, to] of rules.ribs)
      this.most.fill(Infinity, Math.max(0, Math.floor(from)), Math.max(0, Math.ceil(to)));
  }

  /** Counts what stands now. */
  count(standing: Standing): void {
    this.solid.fill(0);
    this.addWebs(this.solid, this.rules.rows, standing);
    for (const sum of this.sums.values()) sum.isNew = false;
  }

  /** How much of the board is solid across more rows than may be, mm times rows. */
  excess(): number {
    const { solid, most } = this;
    let sum = 0;
    for (let i = 0; i < solid.length; i++) if (solid[i]! > most[i]!) sum += solid[i]! - most[i]!;
    return sum;
  }

  /** How much more that would be if more were solid of the one or two rows beside a joint, told row by row. */
  more(one: readonly Closed[], other: readonly Closed[]): number {
    let more = 0;
    for (const { from, to, rows } of one) more += this.over(from, to, rows);
    for (const { from, to, rows } of other) {
      more += this.over(from, to, rows);
      // Where both are closed, each was counted as if the other were not.
      for (const beside of one) {
        const [a, b] = [Math.max(from, beside.from), Math.min(to, beside.to)];
        if (a >= b) continue;
        more += this.over(a, b, rows + beside.rows) - this.over(a, b, rows) - this.over(a, b, beside.rows);
      }
    }
    return more;
  }

  private over(from: number, to: number, rows: number): number {
    const sum = this.sumFor(rows);
    const within = (i: number) => Math.min(this.solid.length, Math.max(0, i));
    return sum[within(to)]! - sum[within(from)]!;
  }

  private sumFor(rows: number): Float64Array {
    const { solid, most } = this;
    const known = this.sums.get(rows) ?? { isNew: false, sum: new Float64Array(solid.length + 1) };
    if (known.isNew) return known.sum;
    let all = 0;
    for (let i = 0; i < solid.length; i++) {
      const spare = most[i]! - solid[i]!;
      all += spare > 0 ? Math.max(0, rows - spare) : rows;
      known.sum[i + 1] = all;
    }
    known.isNew = true;
    this.sums.set(rows, known);
    return known.sum;
  }

  private addRuns(count: Float64Array, rows: readonly Row[]): void {
    for (const row of rows) {
      const parts = this.drawn.get(row.id) ?? [];
      if (parts.length > 0) this.add(count, row, parts[0]!.from, parts[parts.length - 1]!.to, 1);
    }
  }

  /** What is solid of the run of each row. */
  private addWebs(count: Float64Array, rows: readonly Row[], standing: Standing, times = 1): void {
    for (const row of rows) {
      const all = this.drawn.get(row.id) ?? [];
      if (all.length === 0) continue;
      let end = all[0]!.from;
      for (const { from, to } of standing.get(row.id) ?? []) {
        if (from > end) this.add(count, row, end, from, times);
        if (to > end) end = to;
      }
      this.add(count, row, end, all[all.length - 1]!.to, times);
    }
  }

  private add(count: Float64Array, row: Row, from: number, to: number, times: number): void {
    const rows = times * timesOf(this.rules, row);
    const end = Math.min(count.length, cell(row, to));
    for (let i = Math.max(0, cell(row, from)); i < end; i++) count[i]! += rows;
  }
}

const ROUNDING = 1e-9;

/** The first millimetre whose middle lies behind a place on a row's face. */
function cell({ face: { origin, along } }: Row, s: number): number {
  return Math.ceil(origin[0] + s * along[0] - 0.5);
}

/** What a dot closes of one row. */
export function closedBy({ cut }: Price, row: Row, rules: AcrossRules): Closed[] {
  const rows = timesOf(rules, row);
  const closed: Closed[] = [];
  for (const [part, left] of cut) {
    let end = part.from;
    for (const { from, to } of left) {
      if (from > end) closed.push({ from: cell(row, end), to: cell(row, from), rows });
      end = to;
    }
    if (part.to > end) closed.push({ from: cell(row, end), to: cell(row, part.to), rows });
  }
  return closed;
}

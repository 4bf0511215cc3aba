/** A block as the glue sees it. */
export interface GlueBlock {
  readonly id: string;
  readonly row: string;
  /** From and to along the face of its row, mm. */
  readonly from: number;
  readonly to: number;
  /** What is spread with glue, mm²: the faces of the chamber that the block meets. */
  readonly area: number;
}

/** How the builder and the glue work. */
export interface GlueSetting {
  /**
   * Between the first glue spread and the last clamp tight, minutes: from the glue's own sheet, shorter in the warm.
   */
  readonly openTime: number;
  /** To spread, set and clamp one block, minutes. */
  readonly minutesPerBlock: number;
  /** Between clamps along the face at most, mm. */
  readonly clampSpacing: number;
  /** g/m² of glued area. */
  readonly spread: number;
  /** What stays in the cup and on the brush, as a share of what is spread (0..1). */
  readonly loss: number;
}

/** Blocks that are glued in one go: of one row, next to each other. */
export interface GlueBatch {
  /** Counted from 1 through all rows. */
  readonly number: number;
  readonly row: string;
  readonly blocks: readonly string[];
  readonly minutes: number;
  /** Where the clamps sit along the face, mm from where `from` and `to` are measured. */
  readonly clamps: readonly number[];
  /** Glue to mix or pour, g. */
  readonly glue: number;
}

export interface GluePlan {
  readonly batches: readonly GlueBatch[];
  /** g, of all batches. */
  readonly glue: number;
  /** The most clamps any batch needs. */
  readonly clamps: number;
  readonly faults: readonly GlueFault[];
}

export type GlueFault =
  | { readonly kind: 'not-a-number'; readonly what: keyof GlueSetting }
  | { readonly kind: 'open-time-too-short'; readonly openTime: number; readonly needs: number };

/**
 * The order in which the blocks are glued in: row by row as given, each from the nose, in batches that the open time
 * allows and that are as equal as can be. Without batches, and with a fault, where the numbers allow none.
 */
export function gluePlan(blocks: readonly GlueBlock[], setting: GlueSetting): GluePlan {
  const faults = glueFaults(setting);
  if (faults.length > 0) return { batches: [], glue: 0, clamps: 0, faults };
  const most = Math.floor(setting.openTime / setting.minutesPerBlock + MINUTE_ROUNDING);
  const batches: GlueBatch[] = [];
  for (const row of new Set(blocks.map((block) => block.row))) {
    const ofRow = blocks.filter((block) => block.row === row).sort((a, b) => a.from - b.from);
    for (const group of equalParts(ofRow, Math.ceil(ofRow.length / most))) {
      batches.push({
        number: batches.length + 1,
        row,
        blocks: group.map(({ id }) => id),
        minutes: group.length * setting.minutesPerBlock,
        clamps: clampPlaces(group, setting.clampSpacing),
        glue: glueFor(
          group.reduce((sum, { area }) => sum + area, 0),
          setting,
        ),
      });
    }
  }
  return {
    batches,
    glue: batches.reduce((sum, { glue }) => sum + glue, 0),
    clamps: Math.max(0, ...batches.map(({ clamps }) => clamps.length)),
    faults,
  };
}

/** Glue for an area, what is lost included, g. @param area - mm² */
export function glueFor(area: number, { spread, loss }: Pick<GlueSetting, 'spread' | 'loss'>): number {
  return (area / 1e6) * spread * (1 + loss);
}

/** The fewest clamps, evenly along a run of blocks, no further apart than asked and at least one over every block. */
export function clampPlaces(run: readonly { readonly from: number; readonly to: number }[], spacing: number): number[] {
  const start = Math.min(...run.map(({ from }) => from));
  const length = Math.max(...run.map(({ to }) => to)) - start;
  const shortest = Math.min(...run.map(({ from, to }) => to - from));
  // With as many clamps as the shortest block goes into the run, no block can lie between two of them.
  const enough = Math.max(Math.ceil(length / spacing), Math.ceil(length / shortest));
  for (let count = Math.max(1, Math.ceil(length / spacing)); ; count++) {
    const places = Array.from({ length: count }, (_, i) => start + ((i + 0.5) * length) / count);
    const held = run.every(({ from, to }) => places.some((place) => place >= from && place <= to));
    if (held || count > enough) return places;
  }
}

/** Cuts a list into `count` runs whose lengths differ by one at most, the longer first. */
function equalParts<T>(list: readonly T[], count: number): T[][] {
  const starts = Array.from({ length: count + 1 }, (_, i) => Math.ceil((i * list.length) / count));
  return starts.slice(1).map((end, i) => list.slice(starts[i], end));
}

function glueFaults(setting: GlueSetting): GlueFault[] {
  const { openTime, minutesPerBlock, clampSpacing, spread, loss } = setting;
  const faults: GlueFault[] = [];
  for (const [what, value] of Object.entries({ openTime, minutesPerBlock, clampSpacing, spread })) {
    if (!(Number.isFinite(value) && value > 0)) faults.push({ kind: 'not-a-number', what: what as keyof GlueSetting });
  }
  if (!(Number.isFinite(loss) && loss >= 0)) faults.push({ kind: 'not-a-number', what: 'loss' });
  if (faults.length === 0 && minutesPerBlock > openTime) {
    faults.push({ kind: 'open-time-too-short', openTime, needs: minutesPerBlock });
  }
  return faults;
}

/** 0.3 + 0.3 + 0.3 minutes must count as 0.9. */
const MINUTE_ROUNDING = 1e-9;

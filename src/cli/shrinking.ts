import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { Plan } from '../plan.js';
import { sayExactly, thinFinding, WALL } from '../verdict/thin.js';
import { thinWalls, type ThinWall } from '../proof/thinWalls.js';

/**
 * What the mesh may be off the smooth surface, mm (`CHORD_ERROR`): a chamber whose wall is short by less than that
 * stays as it was drawn.
 */
const NOTHING = 0.05;

/** What the measures after shaping ask of the chambers as they were drawn, in lines; and whether any must shrink. */
export interface Shrinking {
  readonly must: boolean;
  /** How many, the worst, and by how much in each row. */
  readonly summary: readonly string[];
  /** Every wall of every one of them, and its new size. */
  readonly each: readonly string[];
}

/** Proves the chambers as drawn on the board as measured; nothing where nothing was measured. */
export function shrinkingOf({ drawn, ...plan }: Plan): Shrinking | undefined {
  if (!drawn) return undefined;
  const { layup, trees, board, asked } = plan;
  const short = thinWalls(drawn.chambers, layup.rows, trees, board.mesh.chordError, asked);
  const thin = short.filter((wall) => missing(wall) >= NOTHING).sort((a, b) => missing(b) - missing(a));
  const of = drawn.chambers.length;
  if (thin.length === 0)
    return { must: false, summary: [`As shaped: all ${of} chambers as drawn still keep their walls.`], each: [] };
  const { units } = plan.job;
  const must = (walls: readonly ThinWall[]) => new Set(walls.map(({ chamber }) => chamber));
  const worst = (walls: readonly ThinWall[]) =>
    `${walls[0]!.chamber}, ${WALL[walls[0]!.patch]} ${sayExactly(missing(walls[0]!), units)} too thin`;
  const rows = layup.rows.flatMap(({ id }) => {
    const chambers = drawn.chambers.filter(({ row }) => row === id);
    const its = thin.filter(({ chamber }) => chambers.some((each) => each.id === chamber));
    return its.length === 0 ? [] : [`  ${id}: ${must(its).size} of ${chambers.length}; the worst is ${worst(its)}`];
  });
  return {
    must: true,
    summary: [
      `As shaped: ${must(thin).size} of ${of} chambers as drawn must shrink; the worst is ${worst(thin)}.`,
      ...rows,
    ],
    each: [...must(thin)].flatMap((id) => [
      ...thin.filter(({ chamber }) => chamber === id).map((wall) => `  ${id}: ${thinFinding(wall, units).what}`),
      `    ${newSize(id, drawn, plan, units)}`,
    ]),
  };
}

const missing = ({ asked, wall }: ThinWall): number => asked - wall;

function newSize(id: string, drawn: Plan, { blocks }: Pick<Plan, 'blocks'>, units: Units): string {
  const size = (of: Plan['blocks'][number]) =>
    [of.length, of.height, of.thickness].map((mm) => printAs('block', mm, units)).join(' × ');
  const before = size(drawn.blocks.find((block) => block.id === id)!);
  const block = blocks.find((each) => each.id === id);
  if (!block) return 'no chamber of the smallest size fits there any more';
  const after = size(block);
  return after === before
    ? `still ${after} on the rule, but further from the surface: rout to the line of its new face sheet`
    : `to ${after}, from ${before}`;
}

import type { Joint, LaidMember, Layup } from '../layup/layup.js';

/** A straight line in plan: `y = at + slope · x`, `x` from the board's nose tip, mm. */
export interface Line {
  readonly at: number;
  readonly slope: number;
}

/**
 * A strip of the glue-up as it lies in the moulded blank: between two saw cuts, before the stringers part it from its
 * neighbours. `y` from the blank's centreline, `x` from the nose tip of the board that lies in it, mm.
 */
export interface SawnStrip {
  readonly member: LaidMember;
  /** Its edges; absent where the blank's own rail ends it. */
  readonly left?: Line;
  readonly right?: Line;
  /** How far to the right it stands in the glue-up of where it was in the blank. */
  readonly moved: Line;
}

/**
 * Where each strip of the glue-up is sawn from a moulded blank. From the centreline outward each strip takes its width
 * and the saw its kerf between two strips, whatever comes between them later; a stringer or a joint on the centreline
 * means a cut along the blank's centreline. So the glued blank is wider than the moulded one by the stringers and
 * narrower by the kerfs.
 *
 * @param kerf what the saw takes, mm
 * @param statedAt where the builder saws a member's inner edge, mm from the blank's centreline; undefined: side by side
 */
export function sawnStrips(
  { members }: Layup,
  kerf: number,
  statedAt: (member: LaidMember) => number | undefined = () => undefined,
): SawnStrip[] {
  const middle = members.findIndex(({ side }) => side === 'C');
  const firstRight = members.findIndex(({ side }) => side === 'R');
  const centre = members[middle];
  const isCentreStrip = centre?.kind === 'strip';
  const right = outward(members.slice(firstRight), 1, kerf, statedAt, centre);
  const left = outward(members.slice(0, middle < 0 ? firstRight : middle).reverse(), -1, kerf, statedAt, centre);
  const between: SawnStrip[] = isCentreStrip ? [{ member: centre, ...edges(centre), moved: { at: 0, slope: 0 } }] : [];
  return [...left.reverse(), ...between, ...right];
}

function edges({ left, right }: LaidMember): Pick<SawnStrip, 'left' | 'right'> {
  return { ...(left && { left: lineOf(left) }), ...(right && { right: lineOf(right) }) };
}

/** The strips of one side from the centre outward; `hand` is 1 on the right, −1 on the left. */
function outward(
  members: readonly LaidMember[],
  hand: 1 | -1,
  kerf: number,
  statedAt: (member: LaidMember) => number | undefined,
  centre?: LaidMember,
): SawnStrip[] {
  const [inner, outer] = hand === 1 ? (['left', 'right'] as const) : (['right', 'left'] as const);
  const centreEdge = centre?.kind === 'strip' ? centre[outer] : undefined;
  /** The edge of what is sawn off so far. */
  let edge: Line = centreEdge ? lineOf(centreEdge) : { at: (-hand * kerf) / 2, slope: 0 };
  const strips: SawnStrip[] = [];
  for (const member of members) {
    if (member.kind !== 'strip') continue;
    const stated = statedAt(member);
    const from: Line = { at: stated === undefined ? edge.at + hand * kerf : hand * stated, slope: edge.slope };
    const joint = member[inner] ? lineOf(member[inner]) : { at: 0, slope: 0 };
    const moved = less(joint, from);
    const to = member[outer] && less(lineOf(member[outer]), moved);
    strips.push({ member, [inner]: from, ...(to && { [outer]: to }), moved });
    if (to) edge = to;
  }
  return strips;
}

const lineOf = ({ at, slope }: Joint): Line => ({ at, slope });
const less = (a: Line, b: Line): Line => ({ at: a.at - b.at, slope: a.slope - b.slope });

import { choose } from './choose.js';
import type { Point } from '../../contour/point.js';
import { useId, useMemo } from 'preact/hooks';
import { PATCHES, type Patch } from '../../board/mesh.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Bench, BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import type { Gap } from '../../view/gap.js';
import { chambersAt, surfaceAt, type CutChamber } from '../../view/section.js';
import { wallsInPlane } from '../../view/wallsInPlane.js';
import { fillOf, Patterns } from './Patterns.js';
import { pathOf, useWidth } from './scale.js';
import { spareOf, spareStep } from './spare.js';

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}

const AIR = 14;
/** So far from a tip at least the board is cut, mm. */
const TIP = 0.5;
/** A wall thicker than this is not dimensioned: it is the board, mm. */
const WORTH_A_DIMENSION = 90;
/** The close-up's height on the screen, px, and what it shows around the chamber, mm. */
const CLOSE_HEIGHT = 210;
const AROUND = 45;

/** The cross-section under the pointer: whole, and the chosen row's chamber close up with its walls dimensioned. */
export function CrossSection({ bench, state, shown }: Props) {
  const { ref, width } = useWidth();
  const { board, layup, result } = shown;
  const { units } = state;
  // At the very tips there is nothing to cut.
  const x = Math.min(Math.max(state.x, TIP), result.board.length - TIP);
  const surface = useMemo(() => surfaceAt(board.mesh, x), [board, x]);
  const outline = useMemo(() => surface.map(({ points }) => pathOf(points, true)).join(''), [surface]);
  const cuts = useMemo(() => chambersAt(layup.rows, result.chambers, x), [result, layup, x]);
  const here = cuts.find(({ chamber }) => chamber.id === state.chamber) ?? cuts.find(({ row }) => row.id === state.row);
  const walls = useMemo(() => (here ? wallsInPlane(surface, here.corners, PATCHES) : {}), [here, surface]);

  const heights = surface.flatMap(({ points }) => points.map(([, z]) => z));
  const low = Math.min(...heights) - AIR;
  const top = Math.max(...heights) + AIR;
  const whole = { left: -result.board.width / 2 - AIR, right: result.board.width / 2 + AIR, low, top };
  const close = here ? aroundOf(here.corners, width / CLOSE_HEIGHT) : undefined;
  const place = printLength(x, units, 'feet');
  const draw = (view: typeof whole, isClose: boolean) => {
    const scale = width / (view.right - view.left);
    return (
      <svg
        width={width}
        height={Math.round((view.top - view.low) * scale)}
        viewBox={`${view.left} ${-view.top} ${view.right - view.left} ${view.top - view.low}`}
        role="img"
        aria-label={isClose ? `Close up of ${here!.chamber.id} at ${place}` : `Cross-section ${place} from the nose`}
        class="section"
      >
        <Patterns prefix={isClose ? 'close' : 'section'} scale={scale} />
        <Cross
          shown={shown}
          state={state}
          outline={outline}
          cuts={cuts}
          prefix={isClose ? 'close' : 'section'}
          bench={bench}
        />
        {isClose &&
          PATCHES.map((wall) => {
            const found = walls[wall];
            if (!found || found.distance > WORTH_A_DIMENSION) return null;
            return (
              <Dimension
                key={wall}
                {...found}
                text={printAs('there', found.distance, units)}
                scale={scale}
                view={view}
              />
            );
          })}
        {!isClose && close && (
          <rect
            class="window"
            x={close.left}
            y={-close.top}
            width={close.right - close.left}
            height={close.top - close.low}
          />
        )}
      </svg>
    );
  };

  return (
    <div ref={ref} class="picture">
      {draw(whole, false)}
      {close ? draw(close, true) : <p class="empty">No chamber of row {state.row ?? '–'} here: solid.</p>}
      {here && <WallTable shown={shown} state={state} chamber={here.chamber} walls={walls} />}
    </div>
  );
}

interface CrossProps extends Props {
  /** The finished surface as an SVG path. */
  readonly outline: string;
  readonly cuts: readonly CutChamber[];
  readonly prefix: string;
}

function Cross({ shown, state, outline, cuts, prefix, bench }: CrossProps) {
  const clip = useId();
  const { layup, result } = shown;
  const at = (joint: (typeof layup.joints)[number] | undefined, otherwise: number) =>
    joint ? joint.at + joint.slope * state.x : otherwise;
  return (
    <>
      <clipPath id={clip}>
        <path d={outline} />
      </clipPath>
      <path class="board" d={outline} />
      <g clip-path={`url(#${clip})`}>
        {layup.members.map(({ id, kind, routing, left, right }) => {
          const from = at(left, -1000);
          return kind === 'strip' ? null : (
            <rect
              key={id}
              class={`stringer ${routing}`}
              x={from}
              y={-1000}
              width={Math.max(0, at(right, 1000) - from)}
              height={2000}
            />
          );
        })}
        {layup.joints.map((joint) => (
          <line key={joint.id} class={`joint ${joint.kind}`} x1={at(joint, 0)} x2={at(joint, 0)} y1={-1000} y2={1000} />
        ))}
      </g>
      {cuts.map(({ chamber, corners }) => (
        <path
          key={chamber.id}
          class={chamber.row === state.row ? 'chamber chosen' : 'chamber'}
          fill={fillOf(prefix, spareStep(spareOf(chamber, result.asked, state.wall)))}
          d={pathOf(corners, true)}
          onClick={() => choose(bench, chamber.id)}
        />
      ))}
    </>
  );
}

interface DimensionProps extends Gap {
  readonly text: string;
  readonly scale: number;
  readonly view: { readonly left: number; readonly right: number; readonly low: number; readonly top: number };
}

/** A wall's size: a line from chamber to surface, with its figure outside beside the surface. */
function Dimension({ from, to, distance, text, scale, view }: DimensionProps) {
  const size = distance || 1;
  const away = 12 / scale;
  const y = Math.min(
    Math.max(to[0] + ((to[0] - from[0]) / size) * away, view.left + 24 / scale),
    view.right - 24 / scale,
  );
  const z = Math.min(Math.max(to[1] + ((to[1] - from[1]) / size) * away, view.low + 7 / scale), view.top - 7 / scale);
  return (
    <g class="dimension">
      <line x1={from[0]} y1={-from[1]} x2={to[0]} y2={-to[1]} />
      <circle cx={from[0]} cy={-from[1]} r={2 / scale} />
      <circle cx={to[0]} cy={-to[1]} r={2 / scale} />
      <text x={y} y={-z} font-size={13 / scale} dy="0.35em">
        {text}
      </text>
    </g>
  );
}

interface TableProps {
  readonly shown: Shown;
  readonly state: BenchState;
  readonly chamber: Shown['result']['chambers'][number];
  readonly walls: Partial<Record<Patch, Gap>>;
}

/** The chamber's walls: proved over the whole chamber, and as dimensioned in this section. */
function WallTable({ shown, state, chamber, walls }: TableProps) {
  const { asked } = shown.result;
  const there = (mm: number) => printAs('there', mm, state.units);
  return (
    <table class="walls">
      <caption>
        Walls of {chamber.id}, {printAs('depth', chamber.depth[1] - chamber.depth[0], state.units)} deep
      </caption>
      <thead>
        <tr>
          <th scope="col">Wall</th>
          <th scope="col">asked</th>
          <th scope="col">proved</th>
          <th scope="col">thinnest at</th>
          <th scope="col">here</th>
        </tr>
      </thead>
      <tbody>
        {PATCHES.map((wall) => (
          <tr key={wall} data-wall={wall}>
            <th scope="row">{wall}</th>
            <td>{printAs('needed', asked[wall], state.units)}</td>
            <td>
              <strong>{there(chamber.wall[wall])}</strong>
            </td>
            <td>{printLength(chamber.at[wall][0], state.units, 'feet')}</td>
            <td>{walls[wall] ? there(walls[wall].distance) : '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The close-up's window: the chamber with its walls, in the shape of the picture. */
function aroundOf(outline: readonly Point[], shape: number) {
  const ys = outline.map(([y]) => y);
  const zs = outline.map(([, z]) => z);
  const middle = [(Math.min(...ys) + Math.max(...ys)) / 2, (Math.min(...zs) + Math.max(...zs)) / 2] as const;
  const width = Math.max(...ys) - Math.min(...ys) + 2 * AROUND;
  const height = Math.max(Math.max(...zs) - Math.min(...zs) + 2 * AROUND, width / shape);
  const wide = height * shape;
  return {
    left: middle[0] - wide / 2,
    right: middle[0] + wide / 2,
    low: middle[1] - height / 2,
    top: middle[1] + height / 2,
  };
}

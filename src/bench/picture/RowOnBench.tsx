import { choose } from './choose.js';
import { counted } from '../../length/counted.js';
import { stretchOf } from '../../chamber/stretch.js';
import { pathData } from '../../contour/pathData.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { toFace } from '../../layup/frame.js';
import type { Bench, BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import { words } from '../state/words.js';
import { withDotMoved } from '../edit/dot.js';
import { ruleStep } from '../../job/edit/written.js';
import { Handle } from './DragHandles.js';
import { useFaceLine } from './useFaceLine.js';
import { fillOf, numberOn, Patterns } from './Patterns.js';
import { useWidth, wholeBoard } from './scale.js';
import { spareOf, spareStep } from './spare.js';

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}

const AIR = 16;
/**
 * The whole board is low and long; its heights are drawn larger by this much until it is zoomed to a size at which they
 * can be read.
 */
const TALLER = 2;
const TALL_ENOUGH = 130;
const ROOM_FOR_NUMBER = 30;

/**
 * The chosen row's face, in line with the board above: its deck and bottom line, what is routed, what stays, where the
 * marks go.
 */
export function RowOnBench({ bench, state, shown }: Props) {
  const { ref, width } = useWidth();
  const { result, layup, board } = shown;
  const row = layup.rows.find(({ id }) => id === state.row);
  const joint = row && layup.joints.find(({ id }) => id === row.face.joint);
  const line = useFaceLine(board, row?.face);
  if (!row || !joint || !line) {
    return (
      <div ref={ref} class="picture">
        <p class="empty">No row is routed here: no dotted joint opens the blank to the router.</p>
      </div>
    );
  }
  const visible = state.visible ?? wholeBoard(result.board.length);
  const scale = width / (visible.to - visible.from);
  const top = line.high + AIR;
  const low = line.low - AIR;
  const taller = (top - low) * scale < TALL_ENOUGH ? TALLER : 1;
  const height = Math.round((top - low) * scale * taller);
  const s = toFace(row.face, state.x, joint.at + joint.slope * state.x)[0];
  const isTurned = row.face.inward[1] < 0;
  const chambers = result.chambers.filter((chamber) => chamber.row === row.id);
  const dots = result.dots.filter((dot) => dot.joint === joint.id);

  return (
    <div ref={ref} class="picture">
      <svg
        width={width}
        height={height}
        viewBox={`${visible.from} ${-top} ${visible.to - visible.from} ${top - low}`}
        preserveAspectRatio="none"
        class="face"
        role="group"
        aria-label={`Face ${row.face.id}, row ${row.id}, ${counted(chambers.length, 'chamber')}; ${words.ends[row.end]}`}
        onPointerMove={(event) => {
          const box = (event.currentTarget as Element).getBoundingClientRect();
          const at = visible.from + (event.clientX - box.left) / scale;
          bench.show({ x: Math.min(Math.max(at, 0), result.board.length) });
        }}
      >
        <Patterns prefix="face" scale={scale} />
        <path class="board" d={line.path} />
        {result.webs
          .filter((web) => web.row === row.id)
          .map((web) => (
            <rect
              key={web.between.join()}
              class="web"
              x={web.from}
              y={-top}
              width={web.to - web.from}
              height={4 / scale}
            />
          ))}
        {chambers.map((chamber) => {
          const name = spareStep(spareOf(chamber, result.asked, state.wall));
          const z = chamber.profile.map(([, each]) => each);
          const { from, to } = stretchOf(chamber.profile);
          const size = 12 / scale;
          return (
            <g key={chamber.id}>
              <path
                class={chamber.id === state.chamber ? 'chamber chosen' : 'chamber'}
                data-face-chamber={chamber.id}
                fill={fillOf('face', name)}
                d={pathData(
                  chamber.contour,
                  true,
                  ({ x, y }) => ({ x, y: -y }),
                  (mm) => mm.toFixed(2),
                )}
                onClick={() => choose(bench, chamber.id)}
              />
              {(to - from) * scale > ROOM_FOR_NUMBER && (
                <text
                  class={numberOn(name)}
                  aria-hidden="true"
                  font-size={size}
                  dy="0.35em"
                  transform={`translate(${(from + to) / 2} ${-(Math.min(...z) + Math.max(...z)) / 2}) scale(1 ${1 / taller})`}
                >
                  {chamber.id.slice(chamber.id.indexOf('-') + 1)}
                </text>
              )}
            </g>
          );
        })}
        {dots.map((dot) => (
          <g key={dot.id}>
            <circle class="dot" cx={dot.s} cy={-dot.z} r={dot.diameter / 2} />
            <Handle
              bench={bench}
              name={`Dot ${dot.id}`}
              x={dot.s}
              y={dot.z}
              size={24 / scale}
              scale={scale}
              scaleUp={scale * taller}
              value={dot.x}
              said={`${printLength(dot.x, state.units, 'feet')} from the nose, ${printAs('there', dot.margin, state.units)} inside the surface`}
              step={ruleStep(shown.job.units)}
              move={(text, from, dx, dz) => withDotMoved(text, from, result.dots, dot.id, dx, dz)}
            />
          </g>
        ))}
        <line class="pointer" x1={s} x2={s} y1={-top} y2={-low} />
      </svg>
      <p class="caption">
        Face {row.face.id}, {words.ends[row.end]}. {counted(chambers.length, 'chamber')}
        {depthsOf(chambers, state.units)}. Heights drawn {taller}:1.{' '}
        {isTurned &&
          'On the bench, face up, this face has its nose to the right; here it is in line with the board above.'}
      </p>
    </div>
  );
}

function depthsOf(chambers: Shown['result']['chambers'], units: BenchState['units']): string {
  if (chambers.length === 0) return '';
  const depths = chambers.map(({ depth }) => depth[1]);
  const [least, most] = [Math.min(...depths), Math.max(...depths)].map((mm) => printAs('depth', mm, units));
  return least === most ? `, ${least} deep` : `, ${least} to ${most} deep`;
}

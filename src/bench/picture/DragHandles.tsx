import { useRef } from 'preact/hooks';
import type { Bench, BenchState } from '../state/bench.js';
import { movableJoint, withJointMoved } from '../edit/joint.js';
import { withKeepOutMoved } from '../edit/keepOut.js';
import { ruleStep } from '../../job/edit/written.js';
import { printLength } from '../../length/length.js';
import type { Shown } from '../plan/answer.js';
import { changedAt } from '../plan/pace.js';
import { keepOutInPlan } from '../../view/keepOutInPlan.js';

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
  /** px in a mm. */
  readonly scale: number;
}

/** A handle's size on the screen, px: 24 is the least a finger and WCAG 2.2 (2.5.8) ask for. */
const HANDLE = 24;

/**
 * What can be dragged on the board from above: joints and keep-outs, by pointer or, chosen by Tab, with the arrow keys.
 */
export function DragHandles({ bench, state, shown, scale }: Props) {
  const { job, layup } = shown;
  const size = HANDLE / scale;
  const visible = state.visible ?? { from: 0, to: job.board.length };
  // Joints are held at the end nearer the nose of what is on show, side by side, so that none hides another.
  const first = Math.max(visible.from, 0) + (Math.min(visible.to, job.board.length) - Math.max(visible.from, 0)) * 0.04;
  return (
    <g class="handles">
      {layup.joints.map((joint, i) => {
        const { id, at, slope } = joint;
        const movable = movableJoint(job, joint);
        if (!movable) return null;
        const x = first + (i % 4) * size * 1.15;
        const y = at + slope * x;
        return (
          <Handle
            key={id}
            bench={bench}
            name={`Joint ${id}`}
            x={x}
            y={y}
            size={size}
            scale={scale}
            value={y}
            said={`${printLength(Math.abs(y), state.units)} from the centreline`}
            isAcross
            step={ruleStep(job.units)}
            move={(text, from, _, dy) => withJointMoved(text, from, joint, dy * movable.outward)}
          />
        );
      })}
      {job.keepOuts.map((each, i) => {
        const [x, y] = keepOutInPlan(each).middle;
        return (
          <Handle
            key={`keep-out ${i}`}
            bench={bench}
            name={each.name}
            x={x}
            y={y}
            size={size}
            scale={scale}
            value={x}
            said={`${printLength(x, state.units, 'feet')} from the nose, ${printLength(Math.abs(y), state.units)} from the centreline`}
            step={ruleStep(job.units)}
            move={(text, from, dx, dy) => withKeepOutMoved(text, from, i, dx, dy)}
          />
        );
      })}
    </g>
  );
}

export interface HandleProps {
  readonly bench: Bench;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly scale: number;
  readonly value: number;
  readonly said: string;
  /** px in a mm upward, where a picture's heights are drawn larger than its lengths. */
  readonly scaleUp?: number;
  /** Moves across the board only. */
  readonly isAcross?: boolean;
  readonly step: number;
  /** The text with the thing moved by so many mm along and across from where it is in `from`. */
  readonly move: (text: string, from: Shown['job'], dx: number, dy: number) => string;
}

/** What a thing's move is counted from: the pointer's place (px) or the keys' sum (mm), and the job as it was. */
interface Begun {
  x: number;
  y: number;
  readonly text: string;
  readonly job: Shown['job'];
}

/** Ten marks of the rule at a time with Shift. */
const STRIDE = 10;

export function Handle({
  bench,
  name,
  x,
  y,
  size,
  scale,
  value,
  said,
  isAcross = false,
  scaleUp = scale,
  step,
  move,
}: HandleProps) {
  const drag = useRef<Begun | undefined>(undefined);
  const keyed = useRef<Begun | undefined>(undefined);
  const gesture = `move ${name}`;

  const onPointerDown = (event: PointerEvent) => {
    const { history, shown, isCurrent } = bench.now;
    if (event.button !== 0 || !shown || !isCurrent) return;
    event.stopPropagation();
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    bench.settle();
    drag.current = { x: event.clientX, y: event.clientY, text: history.text, job: shown.job };
  };
  const onPointerMove = (event: PointerEvent) => {
    const from = drag.current;
    if (!from) return;
    event.stopPropagation();
    bench.change(
      () => move(from.text, from.job, (event.clientX - from.x) / scale, -(event.clientY - from.y) / scaleUp),
      gesture,
    );
    changedAt(bench.question, event.timeStamp);
  };
  const onPointerUp = () => {
    if (!drag.current) return;
    drag.current = undefined;
    bench.settle();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const far = step * (event.shiftKey ? STRIDE : 1);
    const by = { ArrowLeft: [-far, 0], ArrowRight: [far, 0], ArrowUp: [0, far], ArrowDown: [0, -far] }[event.key];
    if (!by || (isAcross && by[0] !== 0)) return;
    event.preventDefault();
    event.stopPropagation();
    const { shown, isCurrent, history } = bench.now;
    if (history.gesture !== gesture) keyed.current = undefined;
    if (!keyed.current && (!shown || !isCurrent)) return;
    // Counted from where the thing was when the first key was pressed, so that a key pressed while the plan is made is
    // not lost.
    const from = (keyed.current ??= { x: 0, y: 0, text: history.text, job: shown!.job });
    from.x += by[0]!;
    from.y += by[1]!;
    bench.change(() => move(from.text, from.job, from.x, from.y), gesture);
    changedAt(bench.question, event.timeStamp);
  };
  return (
    <g
      class={isAcross ? 'handle across' : 'handle'}
      role="slider"
      tabindex={0}
      aria-label={`${name}: arrow keys move it`}
      aria-orientation={isAcross ? 'vertical' : 'horizontal'}
      aria-valuenow={Math.round(value)}
      aria-valuemin={isAcross ? -2000 : 0}
      aria-valuemax={8000}
      aria-valuetext={said}
      data-handle={name}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
      onBlur={() => bench.settle()}
    >
      <title>{`${name}: ${said}`}</title>
      <g transform={`translate(${x} ${-y}) scale(1 ${scale / scaleUp})`}>
        <rect class="grip" x={-size / 2} y={-size / 2} width={size} height={size} />
        <circle class="knob" r={size / 4.5} />
      </g>
    </g>
  );
}

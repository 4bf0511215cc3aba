import { useId } from 'preact/hooks';
import type { JobFinding } from '../../job/finding.js';
import type { ChamberSpec } from '../../job/job.js';
import { parseLength } from '../../length/length.js';
import { parseShare } from '../../length/share.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Bench } from '../state/bench.js';
import { documentOf } from '../../job/edit/document.js';
import { valueAt, withValue } from '../../job/edit/value.js';
import { writtenLength } from '../../job/edit/written.js';
import { changedAt } from '../plan/pace.js';
import { FieldInput } from './FieldInput.js';
import type { Field } from './fields.js';

/** The numbers a builder turns until the picture is right: name, and the ends of its slider in the file's units. */
export const SLIDERS = [
  { key: 'pitch', mm: [100, 600], in: [4, 24] },
  { key: 'stagger', share: [0, 1] },
  { key: 'web', mm: [8, 100], in: [3 / 8, 4] },
  { key: 'deckSkin', mm: [3, 40], in: [1 / 8, 1 + 1 / 2] },
  { key: 'bottomSkin', mm: [3, 40], in: [1 / 8, 1 + 1 / 2] },
  { key: 'railWall', mm: [5, 120], in: [1 / 4, 5] },
] as const satisfies readonly {
  key: keyof ChamberSpec;
  mm?: readonly number[];
  in?: readonly number[];
  share?: readonly number[];
}[];

/**
 * A slider's number as it goes into the job file.
 *
 * @param value mm, or a share
 * @param before what stood there
 */
export function writtenBy(slider: (typeof SLIDERS)[number], value: number, file: Units, before?: unknown): string {
  return 'share' in slider ? `${Math.round(value * 100)} %` : writtenLength(value, file, before);
}

interface Props {
  readonly bench: Bench;
  readonly slider: (typeof SLIDERS)[number];
  readonly field: Field;
  readonly findings: readonly JobFinding[];
  readonly chambers: ChamberSpec;
  readonly file: Units;
  readonly units: Units;
}

/** A number with a field, a slider and a step to either side. */
export function Slider({ bench, slider, field, findings, chambers, file, units }: Props) {
  const id = useId();
  const isShare = 'share' in slider;
  const worth = isShare ? 1 : file === 'mm' ? 1 : MM_PER_INCH;
  /** The file's own value, which runs ahead of the plan, and of what is drawn, while the slider is dragged. */
  const current = (): number => {
    const text = valueAt(documentOf(bench.now.history.text), field.path);
    const written = text === undefined ? undefined : (isShare ? parseShare : parseLength)(text, file);
    return (written?.ok ? written.value : chambers[slider.key]) / worth;
  };
  const [least, most] = isShare ? slider.share : slider[file];
  const step = isShare ? 0.05 : file === 'mm' ? 1 : 1 / 16;
  const now = current();
  const onRule = (value: number) => Math.round(Math.min(Math.max(value, least), most) / step) * step;
  const put = (on: number) => (job: string) =>
    withValue(job, field.path, writtenBy(slider, on * worth, file, field.value));
  const set = (next: number, at: number) => {
    const was = current();
    const on = onRule(next);
    if (Math.abs(on - was) < step / 1000) return;
    // Whoever drags a slider mostly drags it on.
    bench.change(put(on), `slider ${slider.key}`, put(onRule(on + on - was)));
    changedAt(bench.question, at);
  };
  return (
    <div class="slider">
      <FieldInput bench={bench} field={field} findings={findings} file={file} units={units} />
      <button
        type="button"
        aria-label={`${field.label}: one step less`}
        onClick={(event) => {
          set(current() - step, event.timeStamp);
          bench.settle();
        }}
      >
        −
      </button>
      <button
        type="button"
        aria-label={`${field.label}: one step more`}
        onClick={(event) => {
          set(current() + step, event.timeStamp);
          bench.settle();
        }}
      >
        +
      </button>
      <input
        id={id}
        type="range"
        aria-label={`${field.label}, slider`}
        data-slider={slider.key}
        min={least}
        max={most}
        step={step}
        value={now}
        aria-valuetext={String(field.value ?? field.usual ?? now)}
        onInput={(event) => set(Number(event.currentTarget.value), event.timeStamp)}
        onChange={() => bench.settle()}
      />
    </div>
  );
}

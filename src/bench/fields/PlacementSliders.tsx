import { useId } from 'preact/hooks';
import { parseLength, printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Placement } from '../../stock/placement.js';
import type { Bench } from '../state/bench.js';
import { documentOf } from '../../job/edit/document.js';
import { valueAt, withoutKey, withValue } from '../../job/edit/value.js';
import { ruleStep, writtenLength } from '../../job/edit/written.js';
import { changedAt } from '../plan/pace.js';

const PLACE = ['stock', 'blank', 'place'] as const;
/** What is turned, and how far to either side of where it began, mm. */
const TURNED = [
  { key: 'along', label: 'Board’s nose tip behind the blank’s nose end', reach: 200 },
  { key: 'up', label: 'Board’s base line over the blank’s, at the middle of the board', reach: 60 },
  { key: 'noseUp', label: 'Board’s nose raised against its tail', reach: 100 },
] as const satisfies readonly { key: keyof Placement; label: string; reach: number }[];

interface Props {
  readonly bench: Bench;
  /** As the board lies, found or placed. */
  readonly placement: Placement;
  readonly file: Units;
  readonly units: Units;
}

/** Three sliders by which the builder lays the board in its blank, and the way back to the place that is found. */
export function PlacementSliders({ bench, placement, file, units }: Props) {
  const id = useId();
  const isPlaced = documentOf(bench.now.history.text).hasIn(PLACE);
  const step = ruleStep(file);
  const current = (key: keyof Placement): number => {
    const written = valueAt(documentOf(bench.now.history.text), [...PLACE, key]);
    const read = written === undefined ? undefined : parseLength(written, file);
    return read?.ok ? read.value : isPlaced ? 0 : placement[key];
  };
  /** All three are written: what is left out would lie at nothing. */
  const put = (key: keyof Placement, mm: number) => (job: string) => {
    const turned = Object.fromEntries(TURNED.map((each) => [each.key, current(each.key)]));
    return TURNED.reduce(
      (text, each) =>
        withValue(
          text,
          [...PLACE, each.key],
          writtenLength(each.key === key ? mm : onRule(turned[each.key]!), file, undefined),
        ),
      job,
    );
  };
  const onRule = (mm: number) => Math.round(mm / step) * step;
  return (
    <fieldset class="placement">
      <legend>{isPlaced ? 'The board lies where you lay it' : 'The board lies where it is found to lie best'}</legend>
      {TURNED.map(({ key, label, reach }) => (
        <div class="slider" key={key}>
          <label for={`${id}-${key}`}>
            {label}: {printLength(current(key), units)}
          </label>
          <input
            id={`${id}-${key}`}
            type="range"
            data-slider={`place-${key}`}
            min={-reach}
            max={reach}
            step={step}
            value={onRule(current(key))}
            aria-valuetext={printLength(current(key), units)}
            onInput={(event) => {
              bench.change(put(key, Number(event.currentTarget.value)), `slider place ${key}`);
              changedAt(bench.question, event.timeStamp);
            }}
            onChange={() => bench.settle()}
          />
        </div>
      ))}
      <button
        type="button"
        disabled={!isPlaced}
        data-act="find-place"
        onClick={() => bench.change((job) => withoutKey(job, PLACE))}
      >
        Find the best place
      </button>
    </fieldset>
  );
}

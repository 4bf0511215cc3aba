import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { JobFinding } from '../../job/finding.js';
import { writePath } from '../../job/mistake/say.js';
import type { Units } from '../../length/units.js';
import type { Bench } from '../state/bench.js';
import { withValue, withoutKey } from '../../job/edit/value.js';
import { withUnit } from '../../job/edit/written.js';
import { changedAt } from '../plan/pace.js';
import { shownValue, type Field } from './fields.js';

interface Props {
  readonly bench: Bench;
  readonly field: Field;
  readonly findings: readonly JobFinding[];
  /** The file's units and those on show. */
  readonly file: Units;
  readonly units: Units;
}

/** A pause this long in typing means: that is what I mean, ms. */
const PAUSE = 500;

/** A value as a builder writes it. What is wrong with it stands below, in the words of the command line. */
export function FieldInput({ bench, field, findings, file, units }: Props) {
  const id = useId();
  const shown = shownValue(field, file, units);
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const pause = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const gesture = `field ${writePath(field.path)}`;
  const mine = findingsAt(findings, field);
  useEffect(() => () => clearTimeout(pause.current), []);

  const put = (text: string, at: number) => {
    clearTimeout(pause.current);
    if (text.trim() === shown.trim()) return;
    bench.change((job) => {
      if (text.trim() === '' && field.usual !== undefined) return withoutKey(job, field.path);
      return withValue(job, field.path, field.kind === 'length' ? withUnit(text, units, file) : text.trim());
    }, gesture);
    changedAt(bench.question, at);
  };
  const leave = (event: Event) => {
    if (typed !== undefined) put(typed, event.timeStamp);
    setTyped(undefined);
    bench.settle();
  };
  const common = {
    id,
    'aria-invalid': mine.length > 0,
    'aria-describedby': mine.length > 0 ? `${id}-finding` : undefined,
    'data-path': writePath(field.path),
    title: field.help,
  };
  return (
    <div class={mine.length > 0 ? 'field wrong' : 'field'}>
      <label for={id}>{field.label}</label>
      {field.choices ? (
        <select
          {...common}
          value={shown || field.usual}
          onChange={(event) => {
            put(event.currentTarget.value, event.timeStamp);
            bench.settle();
          }}
        >
          {field.choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autocomplete="off"
          spellcheck={false}
          placeholder={field.usual}
          value={typed ?? shown}
          onInput={(event) => {
            const text = event.currentTarget.value;
            const at = event.timeStamp;
            setTyped(text);
            clearTimeout(pause.current);
            pause.current = setTimeout(() => put(text, at), PAUSE);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') leave(event);
          }}
          onBlur={leave}
        />
      )}
      <FieldFindings id={`${id}-finding`} findings={mine} />
    </div>
  );
}

export function FieldFindings({ id, findings }: { readonly id: string; readonly findings: readonly JobFinding[] }) {
  if (findings.length === 0) return null;
  return (
    <p id={id} class="finding" role="alert">
      {findings.map(({ severity, what, remedy }) => (
        <span key={what} class={severity}>
          {what} → {remedy}{' '}
        </span>
      ))}
    </p>
  );
}

/** The findings about exactly this value. */
export function findingsAt(findings: readonly JobFinding[], { path }: Pick<Field, 'path'>): JobFinding[] {
  const name = writePath(path);
  return findings.filter(({ where }) => where.path === name);
}

import { useEffect, useState } from 'preact/hooks';
import type { Bench, BenchState } from './state/bench.js';
import type { JobList, Jobs } from './save/jobs.js';
import { save } from './save/save.js';

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly jobs: Jobs;
  readonly list: JobList;
}

/** What is on the bench, and what can be done with it as a whole. */
export function Toolbar({ bench, state, jobs, list }: Props) {
  const { history, saved, file, units, other } = state;
  const isUnsaved = history.text !== saved;
  const [isDark, setDark] = useState<boolean | undefined>(undefined);
  useEffect(() => {
    if (isDark === undefined) return;
    document.documentElement.dataset['light'] = isDark ? 'dark' : 'light';
  }, [isDark]);
  const fetched = (name: string, use: (file: Awaited<ReturnType<Jobs['read']>>) => void) => {
    jobs.read(name).then(use, (error: Error) => bench.show({ said: error.message }));
  };
  return (
    <header class="toolbar">
      <h1>{state.shown?.result.job ?? file.name}</h1>
      <label>
        Job{' '}
        <select
          data-open
          value={file.name}
          onChange={({ currentTarget }) => {
            const name = currentTarget.value;
            if (isUnsaved && !confirm(`${file.name} is not saved. Open ${name} and lose the changes?`)) {
              currentTarget.value = file.name;
              return;
            }
            fetched(name, (job) => bench.open(job, false));
          }}
        >
          {[...new Set([file.name, ...list.jobs])].map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => bench.undo()} disabled={history.past.length === 0} title="Ctrl+Z">
        Undo
      </button>
      <button type="button" onClick={() => bench.redo()} disabled={history.future.length === 0} title="Ctrl+Shift+Z">
        Redo
      </button>
      <button
        type="button"
        class={isUnsaved ? 'main' : ''}
        onClick={() => void save(bench, jobs)}
        disabled={!isUnsaved}
        title="Ctrl+S"
      >
        Save
      </button>
      <label>
        Compare with{' '}
        <select
          data-compare
          value={other?.file.name ?? ''}
          onChange={({ currentTarget: { value } }) =>
            value === '' ? bench.compare(undefined) : fetched(value, (job) => bench.compare(job))
          }
        >
          <option value="">no other</option>
          {list.jobs
            .filter((name) => name !== file.name)
            .map((name) => (
              <option key={name}>{name}</option>
            ))}
        </select>
      </label>
      <fieldset class="switch">
        <legend>Units</legend>
        {(['in', 'mm'] as const).map((each) => (
          <label key={each}>
            <input type="radio" name="units" checked={units === each} onChange={() => bench.show({ units: each })} />
            {each}
          </label>
        ))}
      </fieldset>
      <button type="button" onClick={() => setDark(!(isDark ?? matchMedia('(prefers-color-scheme: dark)').matches))}>
        Light or dark
      </button>
      <p class="said" role="status">
        {state.said || (isUnsaved ? 'Not saved yet.' : '')}
      </p>
    </header>
  );
}

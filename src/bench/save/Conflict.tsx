import { useEffect, useRef, useState } from 'preact/hooks';
import type { Bench } from '../bench.js';
import { saveAs, saveOver } from './save.js';
import type { JobFile, Jobs } from './jobs.js';

/** Asked when the file on disk is no longer the one that was opened. Nothing is lost whatever is chosen. */
export function Conflict({
  bench,
  jobs,
  theirs,
}: {
  readonly bench: Bench;
  readonly jobs: Jobs;
  readonly theirs: JobFile;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [name, setName] = useState(theirs.name.replace(/(\.\w+)$/, '-mine$1'));
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} aria-labelledby="conflict-title" onClose={() => bench.show({ conflict: undefined })}>
      <h2 id="conflict-title">{theirs.name} has been changed on disk</h2>
      <p>
        Somebody or something else wrote it after it was put on the bench. Nothing has been overwritten. What shall
        count?
      </p>
      <p>
        <button type="button" onClick={() => bench.open(theirs, true)}>
          The file on disk
        </button>{' '}
        Yours stays one step back, under Undo.
      </p>
      <p>
        <button type="button" onClick={() => void saveOver(bench, jobs, theirs)}>
          What is on the bench
        </button>{' '}
        The file on disk is replaced; its text stays one step back, under Undo.
      </p>
      <p>
        <button type="button" onClick={() => void saveAs(bench, jobs, name)}>
          Both: save mine as
        </button>{' '}
        <input aria-label="Name of the new file" value={name} onInput={(event) => setName(event.currentTarget.value)} />
      </p>
      <p>
        <button type="button" onClick={() => dialog.current?.close()}>
          Neither, go on
        </button>
      </p>
    </dialog>
  );
}

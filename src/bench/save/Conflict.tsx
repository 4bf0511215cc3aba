import { useEffect, useRef, useState } from 'preact/hooks';
import type { Bench } from '../state/bench.js';
import { saveAs, saveOver } from './save.js';
import type { JobOnDisk, Jobs } from './jobs.js';

/** Asked when the file on disk is no longer the one that was opened. Nothing is lost whatever is chosen. */
export function Conflict({
  bench,
  jobs,
  theirs,
}: {
  readonly bench: Bench;
  readonly jobs: Jobs;
  readonly theirs: JobOnDisk;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [name, setName] = useState(theirs.name.replace(/(\.\w+)$/, '-mine$1'));
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} aria-labelledby="conflict-title" onClose={() => bench.show({ conflict: undefined })}>
      <h2 id="conflict-title">{theirs.name} has been changed on disk</h2>
      <p>
        The file was changed elsewhere after you opened it here. Nothing has been overwritten. Which version do you want
        to keep?
      </p>
      <p>
        <button type="button" onClick={() => bench.open(theirs, true)}>
          Keep the file on disk
        </button>{' '}
        Undo brings yours back.
      </p>
      <p>
        <button type="button" onClick={() => void saveOver(bench, jobs, theirs)}>
          Keep what is on this page
        </button>{' '}
        The file on disk is replaced; Undo brings its text back here.
      </p>
      <p>
        <button type="button" onClick={() => void saveAs(bench, jobs, name)}>
          Keep both: save mine as
        </button>{' '}
        <input aria-label="Name of the new file" value={name} onInput={(event) => setName(event.currentTarget.value)} />
      </p>
      <p>
        <button type="button" onClick={() => dialog.current?.close()}>
          Cancel
        </button>
      </p>
    </dialog>
  );
}

import type { ViewOf } from './viewOf.js';
import { useEffect, useRef, useState } from 'preact/hooks';
import { sayProud } from '../../block/sayProud.js';
import { unbroken } from '../../length/wordsOf.js';
import { answersTo, settled, type Answer } from '../fit/settle.js';
import { MOST_NOTE } from '../log/event.js';
import { stageOf, UNTOUCHED } from '../log/state.js';
import { STEPS, stepAfter, stepsBehind } from '../log/step.js';
import { sayRefit, saySizes } from '../report/trackReport.js';
import { isFine, LinkLine } from './linkLine.js';
import { PhotoOf } from './photoOf.js';
import { sayClock } from './sayClock.js';
import { smallerPhoto } from './link/smallerPhoto.js';
import { StepButton } from './stepButton.js';
import { ANSWER_GIVEN, CAUTIONS, STEP_DONE } from './words.js';

/** Everything about one block, over the page. */
export function BlockCard({ id, close, ...of }: ViewOf & { readonly id: string; readonly close: () => void }) {
  const { shop, state, whole } = of;
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current!.showModal(), []);
  const block = whole.blocks.find((one) => one.id === id);
  const its = state.blocks.get(id) ?? UNTOUCHED;
  const proud = sayProud(block?.proud, whole.units);
  const known = block !== undefined || state.blocks.has(id);
  const next = stepAfter(stageOf(its));
  const behind = stepsBehind(stageOf(its));
  return (
    <dialog ref={dialog} class="card" aria-labelledby="card-title" onClose={close}>
      <h2 id="card-title">{id}</h2>
      {!isFine(of.shown) && <LinkLine {...of.shown} />}
      {!known && <p class="trouble">There is no such block in this plan. Numbers look like {whole.blocks[0]?.id}.</p>}
      {block && (
        <p>
          {unbroken(saySizes(block.sizes, whole.units))}
          <small> length × height × thickness into the piece</small>
        </p>
      )}
      {proud !== '' && <p>{unbroken(`Once glued in, plane off flush: ${proud}`)}</p>}
      <PlanChanged {...of} id={id} />
      {block && (
        <>
          {!whole.refits.has(id) && <StepButton {...of} id={id} />}
          {next && <p class="caution">{CAUTIONS[next]}</p>}
        </>
      )}
      {known && (
        <>
          <ul class="steps">
            {STEPS.map((step, i) => {
              const marks = its.marks[step] ?? [];
              return (
                <li key={step}>
                  <span>
                    <b>{STEP_DONE[step]}</b>{' '}
                    {marks.length > 0
                      ? marks.map(({ who, happened }) => `${sayClock(happened)}${who && ` ${who}`}`).join(', ')
                      : i < behind
                        ? 'done'
                        : '–'}
                  </span>
                  {marks.length > 0 && (
                    <button
                      type="button"
                      onClick={() => void shop.undo(id, step)}
                      aria-label={`Undo: ${STEP_DONE[step]}`}
                    >
                      Undo
                    </button>
                  )}
                </li>
              );
            })}
          </ul>
          <Remarks {...of} id={id} />
        </>
      )}
      <button type="button" class="wide" onClick={() => dialog.current!.close()}>
        Close
      </button>
    </dialog>
  );
}

/** What the changed plan asks of a block in hand, and that it was done. */
function PlanChanged({ shop, whole, state, id }: ViewOf & { readonly id: string }) {
  const refit = whole.refits.get(id);
  if (!refit) return null;
  const tell = async (answer: Answer) => {
    for (const what of settled(answer, id, state.blocks.get(id) ?? UNTOUCHED)) await shop.record(what);
  };
  return (
    <div class="caution">
      <p>Plan changed: {unbroken(sayRefit(refit, whole.units))}</p>
      {answersTo(refit).map((answer) => (
        <button key={answer} type="button" class="wide" onClick={() => void tell(answer)}>
          {ANSWER_GIVEN[answer]}
        </button>
      ))}
    </div>
  );
}

function Remarks({ shop, state, id }: ViewOf & { readonly id: string }) {
  const [note, setNote] = useState('');
  const [failed, setFailed] = useState(false);
  const { notes, photos } = state.blocks.get(id) ?? UNTOUCHED;
  const addPhoto = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    input.value = '';
    const photo = file && (await smallerPhoto(file));
    setFailed(file !== undefined && photo === undefined);
    if (photo) await shop.record({ kind: 'photo', block: id, photo: '' }, photo);
  };
  return (
    <>
      <ul class="plain">
        {notes.map(({ text, who, happened }) => (
          <li key={`${happened} ${text}`}>
            {text} <small>{`${sayClock(happened)}${who && ` ${who}`}`}</small>
          </li>
        ))}
      </ul>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (note.trim() === '') return;
          void shop.record({ kind: 'note', block: id, text: note.trim() });
          setNote('');
        }}
      >
        <label>
          Note
          <textarea
            value={note}
            maxLength={MOST_NOTE}
            rows={2}
            onInput={(event) => setNote(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="wide">
          Save note
        </button>
      </form>
      <label class="file">
        Photo
        <input
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => void addPhoto(event.currentTarget)}
        />
      </label>
      {failed && (
        <p role="alert" class="trouble">
          That picture could not be read. Take the photo as JPEG.
        </p>
      )}
      <div class="photos">
        {photos.map(({ text, happened }) => (
          <PhotoOf key={`${text} ${happened}`} name={text} shop={shop} block={id} />
        ))}
      </div>
    </>
  );
}

import type { ViewOf } from './viewOf.js';
import { unbroken } from '../../length/wordsOf.js';
import { saySizes, TO_DO } from '../report/trackReport.js';
import type { TrackedBlock } from '../log/trackedBlock.js';
import { StepButton } from './stepButton.js';
import { StepMarks } from './stepMarks.js';

/** One block in a list: its number opens it, its button records the next step. */
export function BlockLine({ block, ...of }: ViewOf & { readonly block: TrackedBlock }) {
  const { state, whole, open } = of;
  const its = state.blocks.get(block.id);
  const refit = whole.refits.get(block.id);
  return (
    <li class="block">
      <button type="button" class="open" onClick={() => open(block.id)}>
        <b>{block.id}</b>
        <span class="sizes">{unbroken(saySizes(block.sizes, whole.units))}</span>
        <StepMarks block={its} />
        {refit && <span class="flag">Plan changed: {TO_DO[refit.kind]}</span>}
        {its && its.notes.length + its.photos.length > 0 && (
          <span class="flag quiet">
            {its.notes.length > 0 && `${its.notes.length} note${its.notes.length > 1 ? 's' : ''} `}
            {its.photos.length > 0 && `${its.photos.length} photo${its.photos.length > 1 ? 's' : ''}`}
          </span>
        )}
      </button>
      <StepButton {...of} id={block.id} />
    </li>
  );
}

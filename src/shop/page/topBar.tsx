import type { ViewOf } from './viewOf.js';
import { timeLeft } from '../report/pace.js';
import { progressOf } from '../report/progress.js';
import { countRefits, sayDuration } from '../report/trackReport.js';
import { ProgressBar } from './progressBar.js';
import { KEEPS_NOTHING_WORDS } from './words.js';

/** The job, how far it is, what a changed plan asks, and what stands in the way. */
export function TopBar({ shown, whole, state, showChanged }: ViewOf & { readonly showChanged: () => void }) {
  const { trouble, lasting, refused } = shown;
  const progress = progressOf(whole.blocks, state, whole.refits);
  const left = timeLeft(progress.left, whole.pace);
  return (
    <header class="top">
      <h1>{whole.job}</h1>
      <ProgressBar label="The whole board" progress={progress} />
      <p>
        {progress.glued} of {progress.blocks} glued, {progress.stepsDone} of {progress.steps} steps
        {left !== undefined && progress.stepsDone < progress.steps && <>, about {sayDuration(left)} of work left</>}
      </p>
      {whole.refits.size > 0 && (
        <p role="status" class="caution">
          The plan has changed: {countRefits(whole.refits)}. Only what fits it counts here.
          <button type="button" class="wide" onClick={showChanged}>
            Show what to do
          </button>
        </p>
      )}
      {trouble !== undefined && (
        <p role="alert" class="trouble">
          {trouble}
        </p>
      )}
      {refused.length > 0 && (
        <p role="alert" class="trouble">
          {refused.length} not accepted by the tracker. See them under More.
        </p>
      )}
      {!lasting && <p class="trouble">{KEEPS_NOTHING_WORDS}</p>}
    </header>
  );
}

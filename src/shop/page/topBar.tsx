import { timeLeft } from '../pace.js';
import { progressOf } from '../progress.js';
import { sayDuration } from '../trackReport.js';
import type { ViewOf } from './app.js';
import { ProgressBar } from './progressBar.js';
import { KEEPS_NOTHING_WORDS } from './words.js';

/** The job, how far it is, and whether what is pressed here arrives. */
export function TopBar({ shown, whole, state }: ViewOf) {
  const { link, unsent, trouble, lasting, refused } = shown;
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
      <p role="status" class={link === 'live' && unsent.length === 0 ? 'link' : 'link waiting'}>
        {link === 'live' ? 'Connected' : 'No connection'}
        {unsent.length > 0 && <>: {unsent.length} unsent, kept on this phone</>}
        {unsent.length === 0 && link !== 'live' && <>: go on, it is kept on this phone</>}
      </p>
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

import type { ViewOf } from './viewOf.js';
import { useState } from 'preact/hooks';
import { progressOf } from '../report/progress.js';
import { stageThatFits } from '../fit/standing.js';
import { stepAfter } from '../log/step.js';
import { blocksByBatch } from '../log/trackedBlock.js';
import { BlockLine } from './blockLine.js';
import { GlueClock } from './glueClock.js';
import { CAUTIONS } from './words.js';

/** One gluing batch: what is next, what is not ready, and the open time running. */
export function Gluing(of: ViewOf) {
  const { whole, state } = of;
  const batches = [...blocksByBatch(whole.blocks)];
  const running = batches.find(([name]) => (state.timers.get(name)?.minutes ?? 0) > 0);
  const unfinished = batches.find(([, blocks]) => progressOf(blocks, state, whole.refits).glued < blocks.length);
  const [picked, pick] = useState<string>();
  const chosen = picked ?? (running ?? unfinished ?? batches[0])?.[0] ?? '';
  const blocks = batches.find(([name]) => name === chosen)?.[1] ?? [];
  const nextOf = (id: string) => stepAfter(stageThatFits(state.blocks.get(id), whole.refits.get(id)));
  const ready = blocks.filter(({ id }) => nextOf(id) === 'glued');
  const notReady = blocks.filter(({ id }) => !['glued', undefined].includes(nextOf(id)));
  const progress = progressOf(blocks, state, whole.refits);
  const [next, ...then] = ready;
  return (
    <>
      <div class="filters">
        <label>
          Batch
          <select value={chosen} onChange={(event) => pick(event.currentTarget.value)}>
            {batches.map(([name]) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <p>
          {progress.glued} of {progress.blocks} glued
        </p>
      </div>
      <p class="caution">{CAUTIONS.glued}</p>
      {running && running[0] !== chosen && (
        <>
          <p role="status" class="caution">
            The glue is open for batch {running[0]}.
          </p>
          <button type="button" class="wide" onClick={() => pick(undefined)}>
            Go to batch {running[0]}
          </button>
        </>
      )}
      <GlueClock key={chosen} {...of} batch={chosen} />
      <h2>Next</h2>
      {next ? (
        <ol class="blocks next">
          <BlockLine key={next.id} {...of} block={next} />
        </ol>
      ) : (
        <p class="none">
          {progress.glued === progress.blocks ? 'This batch is glued.' : 'Nothing in this batch is ready to glue.'}
        </p>
      )}
      {then.length > 0 && (
        <>
          <h2>Then</h2>
          <ol class="blocks">
            {then.map((block) => (
              <BlockLine key={block.id} {...of} block={block} />
            ))}
          </ol>
        </>
      )}
      {notReady.length > 0 && (
        <>
          <h2>
            Not ready<small>Have these ready before you open the glue.</small>
          </h2>
          <ol class="blocks">
            {notReady.map((block) => (
              <BlockLine key={block.id} {...of} block={block} />
            ))}
          </ol>
        </>
      )}
    </>
  );
}

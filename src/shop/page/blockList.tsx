import type { ViewOf } from './viewOf.js';
import { useRef, useState } from 'preact/hooks';
import { progressOf } from '../report/progress.js';
import { stageThatFits } from '../fit/standing.js';
import { isStep, STEPS, stepAfter } from '../log/step.js';
import { blocksByRow, type TrackedBlock } from '../log/trackedBlock.js';
import { BlockLine } from './blockLine.js';
import { FindBlock } from './findBlock.js';
import { ProgressBar } from './progressBar.js';
import { CAUTIONS, STEP_TO_DO } from './words.js';

/** Rows with their blocks in order as they lie in the board, filtered by what is to be done and by row. */
export function BlockList({
  todo,
  setTodo,
  ...of
}: ViewOf & { readonly todo: string; readonly setTodo: (todo: string) => void }) {
  const { whole, state } = of;
  const [row, setRow] = useState('all');
  const rows = [...blocksByRow(whole.blocks)];
  // A line that is pressed holds its place until another choice is made: the next touch is for what lies under it.
  const held = useRef(new Set<string>());
  const heldFor = useRef(todo);
  if (heldFor.current !== todo) held.current.clear();
  heldFor.current = todo;
  const isShown = (block: TrackedBlock) => isAsked(block) || held.current.has(block.id);
  const isAsked = (block: TrackedBlock) => {
    const next = stepAfter(stageThatFits(state.blocks.get(block.id), whole.refits.get(block.id)));
    if (todo === 'all') return true;
    if (todo === 'changed') return whole.refits.has(block.id);
    return todo === 'glued' ? next === undefined : next === todo.slice('to '.length);
  };
  const step = todo.slice('to '.length);
  const shown = rows
    .filter(([name]) => row === 'all' || row === name)
    .map(([name, blocks]) => ({ name, blocks, some: blocks.filter(isShown) }))
    .filter(({ some }) => some.length > 0);
  for (const { some } of shown) for (const { id } of some) held.current.add(id);
  const choose = (make: () => void) => {
    held.current.clear();
    make();
  };
  return (
    <>
      <FindBlock {...of} />
      <div class="filters">
        <label>
          Show
          <select value={todo} onChange={(event) => setTodo(event.currentTarget.value)}>
            <option value="all">all blocks</option>
            {STEPS.map((one) => (
              <option key={one} value={`to ${one}`}>
                {STEP_TO_DO[one]}
              </option>
            ))}
            <option value="glued">glued in</option>
            {whole.refits.size > 0 && <option value="changed">plan changed</option>}
          </select>
        </label>
        <label>
          Row
          <select value={row} onChange={(event) => choose(() => setRow(event.currentTarget.value))}>
            <option value="all">all rows</option>
            {rows.map(([name]) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
      </div>
      {isStep(step) && <p class="caution">{CAUTIONS[step]}</p>}
      {shown.map(({ name, blocks, some }) => {
        const progress = progressOf(blocks, state, whole.refits);
        return (
          <section key={name} aria-labelledby={`row-${name}`}>
            <h2 id={`row-${name}`}>
              Row {name}
              <small>
                {progress.glued} of {progress.blocks} glued
              </small>
            </h2>
            <ProgressBar label={`Row ${name}`} progress={progress} />
            <ol class="blocks">
              {some.map((block) => (
                <BlockLine key={block.id} {...of} block={block} />
              ))}
            </ol>
          </section>
        );
      })}
      {shown.length === 0 && <p class="none">No block fits this choice.</p>}
      <Strays {...of} />
    </>
  );
}

/** Blocks that something was recorded about and that the plan no longer has. */
function Strays({ whole, state, open }: ViewOf) {
  const planned = new Set(whole.blocks.map(({ id }) => id));
  const strays = [...state.blocks.keys()].filter((id) => !planned.has(id));
  if (strays.length === 0) return null;
  return (
    <section aria-labelledby="strays">
      <h2 id="strays">Not in the plan any more</h2>
      <ul class="plain">
        {strays.map((id) => (
          <li key={id}>
            <button type="button" onClick={() => open(id)}>
              {id}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

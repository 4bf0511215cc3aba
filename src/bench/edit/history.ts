/** The job's text, and the texts before and after it. */
export interface History {
  readonly past: readonly string[];
  readonly text: string;
  readonly future: readonly string[];
  /** The drag or the field that made the last change; further changes by the same replace it. */
  readonly gesture?: string;
}

/** Steps that can be taken back. A job of 5 kB then takes 1 MB. */
const MOST_STEPS = 200;

export function begun(text: string): History {
  return { past: [], text, future: [] };
}

/**
 * The history with another text.
 *
 * @param gesture what is being dragged or typed into: one gesture is one step back, however many changes it makes
 */
export function changed(history: History, text: string, gesture?: string): History {
  if (text === history.text) return history;
  const goesOn = gesture !== undefined && gesture === history.gesture;
  const past = goesOn ? history.past : [...history.past, history.text].slice(-MOST_STEPS);
  return { past, text, future: [], ...(gesture !== undefined && { gesture }) };
}

/** Ends the gesture: the next change is a step of its own. */
export function settled({ past, text, future }: History): History {
  return { past, text, future };
}

export function undone({ past, text, future }: History): History {
  const before = past.at(-1);
  return before === undefined
    ? { past, text, future }
    : { past: past.slice(0, -1), text: before, future: [text, ...future] };
}

export function redone({ past, text, future }: History): History {
  const [after, ...rest] = future;
  return after === undefined ? { past, text, future } : { past: [...past, text], text: after, future: rest };
}

/*
 * How long it takes from a change to its picture, measured in the page itself and left among the browser's own measures
 * (User Timing Level 3, `performance.measure`) under this name, for `scripts/bench-page.mjs`.
 */
export const PACE = 'change to picture';

let drawn = 0;
const waiting: { readonly question: number; readonly at: number }[] = [];
/** Measures kept by the browser; older ones are let go. */
const MOST_MEASURES = 2000;

/**
 * Remembers when somebody changed something; a movement too small for a change asks for no plan, and waits for no
 * picture.
 *
 * @param question the plan that was asked for then
 * @param at the input event's time stamp, ms
 */
export function changedAt(question: number, at: number): void {
  if (question > drawn) waiting.push({ question, at });
}

/** Notes the time once the picture for this question, or one that overtook it, has been drawn. */
export function followedPicture(question: number): void {
  drawn = question;
  if (waiting.length === 0) return;
  const done = waiting.filter((each) => each.question <= question);
  waiting.splice(0, waiting.length, ...waiting.filter((each) => each.question > question));
  afterPicture(() => {
    const end = performance.now();
    for (const { at } of done) performance.measure(PACE, { start: at, end });
    if (performance.getEntriesByName(PACE).length > MOST_MEASURES) performance.clearMeasures(PACE);
  });
}

/** Does something once what has been shown is drawn. */
export function afterPicture(then: () => void): void {
  // Behind the next frame's callbacks lies the drawing of that frame.
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(undefined);
  });
}

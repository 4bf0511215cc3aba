import type { Progress } from '../report/progress.js';

/** How far some blocks are, as a bar. The numbers stand beside it in words. */
export function ProgressBar({ label, progress }: { readonly label: string; readonly progress: Progress }) {
  return <progress aria-label={label} max={Math.max(1, progress.steps)} value={progress.stepsDone} />;
}

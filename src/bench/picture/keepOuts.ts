import type { KeepOutSpec } from '../../job/job.js';
import { keepOutCorners } from '../../view/keepOutInPlan.js';
import { pathOf } from './scale.js';

/** A keep-out's outline in plan as an SVG path, right up. */
export function keepOutPath(keepOut: KeepOutSpec): string {
  if (keepOut.kind !== 'disc') return pathOf(keepOutCorners(keepOut), true);
  const { x, y, radius: r } = keepOut;
  return `M${x - r} ${-y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
}

import type { KeepOutInPlan } from '../../view/keepOutInPlan.js';

/** A keep-out's outline in plan as an SVG path, right up. */
export function keepOutPath(keepOut: KeepOutInPlan): string {
  if (keepOut.kind === 'disc') {
    const {
      middle: [x, y],
      radius: r,
    } = keepOut;
    return `M${x - r} ${-y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  }
  return `M${keepOut.corners.map(([x, y]) => `${x} ${-y}`).join('L')}Z`;
}

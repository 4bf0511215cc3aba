import type { KeepOutSpec } from '../../job/job.js';

/** A keep-out's outline in plan as an SVG path, right up. */
export function keepOutPath(keepOut: KeepOutSpec): string {
  if (keepOut.kind === 'disc') {
    const { x, y, radius: r } = keepOut;
    return `M${x - r} ${-y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  }
  const corners =
    keepOut.kind === 'polygon'
      ? keepOut.points
      : [-1, 1].flatMap((a) =>
          [-a, a].map((b) => [keepOut.x + (a * keepOut.length) / 2, keepOut.y + (b * keepOut.width) / 2] as const),
        );
  return `M${corners.map(([x, y]) => `${x} ${-y}`).join('L')}Z`;
}

/** Where a keep-out is held, mm. */
export function keepOutMiddle(keepOut: KeepOutSpec): [x: number, y: number] {
  if (keepOut.kind !== 'polygon') return [keepOut.x, keepOut.y];
  const xs = keepOut.points.map(([x]) => x);
  const ys = keepOut.points.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

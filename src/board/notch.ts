/**
 * Draws the points of one half-section that lie within a swallow's notch out to its side, where the section meets it.
 * The section starts at point `first` and has so many columns; `inner` is the half-width of the notch, mm.
 */
export function cutNotch(points: Float64Array, first: number, columns: number, apex: number, inner: number): void {
  drawOut(points, first, first + apex, 1, inner);
  drawOut(points, first + columns - 1, first + apex, -1, inner);
}

/**
 * From the centreline column `from` toward the apex column `to`: every point nearer the centreline than `inner` goes to
 * where the chain passes it.
 */
function drawOut(positions: Float64Array, from: number, to: number, step: number, inner: number): void {
  const width = (i: number) => Math.abs(positions[3 * i + 1]!);
  const signed = Math.sign(positions[3 * to + 1]!) * inner;
  let out = from;
  while (out !== to && width(out) < inner) out += step;
  if (out === from) return;
  const before = out - step;
  const share = (inner - width(before)) / (width(out) - width(before) || 1);
  const z = positions[3 * before + 2]! + share * (positions[3 * out + 2]! - positions[3 * before + 2]!);
  for (let i = from; i !== out; i += step) {
    positions[3 * i + 1] = signed;
    positions[3 * i + 2] = z;
  }
}

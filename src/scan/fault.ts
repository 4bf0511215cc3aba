/**
 * Why a mesh cannot be taken for a board: figures and places, of which `templates/scan.json` makes sentences. Lengths
 * are in the file's own unit where the kind says so, else in mm.
 */
export type ScanFault =
  | { readonly kind: 'notMesh' }
  | { readonly kind: 'truncated'; readonly has: number; readonly needs: number; readonly of: 'bytes' | 'lines' }
  | { readonly kind: 'badLine'; readonly line: number; readonly text: string }
  | { readonly kind: 'format'; readonly format: string }
  | { readonly kind: 'cloud'; readonly points: number }
  | { readonly kind: 'noTriangles' }
  | { readonly kind: 'noNumber'; readonly triangle: number; readonly count: number }
  | { readonly kind: 'noPoint'; readonly triangle: number; readonly point: number; readonly points: number }
  | { readonly kind: 'flat'; readonly triangles: number }
  | { readonly kind: 'tooMany'; readonly triangles: number; readonly most: number }
  /** `would` are the units in which it would be as long as a board. */
  | { readonly kind: 'size'; readonly length: number; readonly unit: string; readonly would: readonly string[] }
  | { readonly kind: 'knownLength'; readonly length: number; readonly known: number }
  | { readonly kind: 'noBoard'; readonly sizes: readonly [number, number, number] }
  | { readonly kind: 'twoBoards'; readonly first: number; readonly second: number; readonly apart: number }
  | { readonly kind: 'oneFace'; readonly share: number }
  | { readonly kind: 'gap'; readonly from: number; readonly to: number }
  | { readonly kind: 'notch'; readonly x: number }
  | { readonly kind: 'marks'; readonly why: 'line' | 'apart'; readonly off: number };

/** Whether what was asked for came out as a fault. */
export function isFault<T extends object>(found: T | ScanFault): found is ScanFault {
  return 'kind' in found;
}

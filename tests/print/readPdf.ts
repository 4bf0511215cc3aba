import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * A page as an independent reader (pdf.js) finds it, in millimetres from the lower left corner: 1/72 in a unit (ISO
 * 32000-1, 8.3.2.3).
 */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly ReadLine[];
  /** Filled outlines. */
  readonly fills: readonly (readonly Point[])[];
  readonly texts: readonly { readonly text: string; readonly x: number; readonly y: number }[];
}

export interface ReadLine {
  readonly points: readonly Point[];
  readonly width: number;
  readonly dashed: boolean;
  /** The rectangle that it is seen in, where there is one: left, bottom, right, top. */
  readonly clip?: Clip;
}

export type Clip = readonly [left: number, bottom: number, right: number, top: number];

export interface Point {
  readonly x: number;
  readonly y: number;
}

const MM = 25.4 / 72;

/** Opens a PDF for reading. Close it with `destroy`. */
export async function openPdf(bytes: Uint8Array): Promise<Awaited<ReturnType<typeof getDocument>['promise']>> {
  return getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 }).promise;
}

/** Reads the pages of a PDF, all or those asked for (from 1). */
export async function readPdf(bytes: Uint8Array, only?: readonly number[]): Promise<readonly ReadPage[]> {
  const pdf = await openPdf(bytes);
  const pages: ReadPage[] = [];
  for (const number of only ?? Array.from({ length: pdf.numPages }, (_, i) => i + 1)) {
    const page = await pdf.getPage(number);
    const [, , width, height] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: (item.transform[4] as number) * MM, y: (item.transform[5] as number) * MM }]
        : [],
    );
    pages.push({ width: width * MM, height: height * MM, texts, ...drawn(await page.getOperatorList()) });
  }
  await pdf.loadingTask.destroy();
  return pages;
}

type Matrix = readonly [number, number, number, number, number, number];

/**
 * Follows the page's operators (ISO 32000-1, 8.5): the path operators of pdf.js are 0 move, 1 line, 2 curve, 4 close.
 */
function drawn(list: { fnArray: number[]; argsArray: unknown[][] }): Pick<ReadPage, 'lines' | 'fills'> {
  const lines: ReadLine[] = [];
  const fills: (readonly Point[])[] = [];
  let state: { matrix: Matrix; width: number; dashed: boolean; clip?: Clip } = {
    matrix: [1, 0, 0, 1, 0, 0],
    width: 1,
    dashed: false,
  };
  const saved: (typeof state)[] = [];
  let clips = false;
  list.fnArray.forEach((operator, i) => {
    const args = list.argsArray[i] as never[];
    if (operator === OPS.save) saved.push(state);
    if (operator === OPS.restore) state = saved.pop() ?? state;
    if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, args as unknown as Matrix) };
    if (operator === OPS.setLineWidth) state = { ...state, width: args[0] };
    if (operator === OPS.setDash) state = { ...state, dashed: (args[0] as number[]).length > 0 };
    if (operator === OPS.clip) clips = true;
    if (operator !== OPS.constructPath) return;
    const [paint, [data]] = args as unknown as [number, [ArrayLike<number> | null]];
    for (const points of data ? subpaths(data, state.matrix) : []) {
      if (paint === OPS.stroke || paint === OPS.closeStroke)
        lines.push({ points, width: state.width * MM, dashed: state.dashed, ...(state.clip && { clip: state.clip }) });
      if (paint === OPS.fill) fills.push(points);
      if (clips) state = { ...state, clip: around(points) };
    }
    clips = false;
  });
  return { lines, fills };
}

function around(points: readonly Point[]): Clip {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

function subpaths(data: ArrayLike<number>, [a, b, c, d, e, f]: Matrix): Point[][] {
  const found: Point[][] = [];
  const at = (i: number): Point => {
    const [x, y] = [data[i]!, data[i + 1]!];
    return { x: (a * x + c * y + e) * MM, y: (b * x + d * y + f) * MM };
  };
  for (let i = 0; i < data.length;) {
    const command = data[i]!;
    if (command === 0) found.push([at(i + 1)]);
    else if (command === 1) found[found.length - 1]!.push(at(i + 1));
    else if (command === 4) found[found.length - 1]!.push(found[found.length - 1]![0]!);
    else throw new Error(`a path command that these papers never use: ${String(command)}`);
    i += command === 4 ? 1 : 3;
  }
  return found;
}

const times = ([a, b, c, d, e, f]: Matrix, [g, h, k, l, m, n]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * k + c * l,
  b * k + d * l,
  a * m + c * n + e,
  b * m + d * n + f,
];

import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { sawnSizeOf } from '../../../src/block/blankSize.js';
import { printAs } from '../../../src/length/rounded.js';
import { labelStocks } from '../../../src/print/paper/labelStock.js';
import { labels } from '../../../src/sheet/blocks/labels.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';
import { printed } from '../printed.js';

/**
 * What a printer may leave unprinted at each edge, mm (`usualSettings.margin`), and how finely the page is looked at,
 * dots an inch.
 */
const MARGIN = 5;
const DPI = 200;
const DOTS_PER_MM = DPI / 25.4;

/** A page in greys, as poppler draws it. */
interface Picture {
  readonly width: number;
  readonly height: number;
  readonly greys: Uint8Array;
}

/**
 * Draws the pages with poppler and wipes what a printer leaves white. Portable grey map: "P5", width, height, 255, one
 * byte a dot.
 */
function pictures(bytes: Buffer): Picture[] {
  const folder = mkdtempSync(join(tmpdir(), 'labels-'));
  try {
    writeFileSync(join(folder, 'labels.pdf'), bytes);
    execFileSync('pdftoppm', ['-r', String(DPI), '-gray', join(folder, 'labels.pdf'), join(folder, 'page')]);
    const names = execFileSync('ls', [folder], { encoding: 'utf8' }).split('\n');
    return names
      .filter((name) => name.endsWith('.pgm'))
      .map((name) => {
        const file = readFileSync(join(folder, name));
        const [header, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 40).toString('latin1'))!;
        const picture = { width: Number(width), height: Number(height), greys: file.subarray(header.length) };
        wipeEdges(picture);
        return picture;
      });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function wipeEdges({ width, height, greys }: Picture): void {
  const edge = Math.ceil(MARGIN * DOTS_PER_MM);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (x < edge || y < edge || x >= width - edge || y >= height - edge) greys[y * width + x] = 255;
    }
  }
}

/** Reads every code of a page with a reader that has nothing of ours (zxing-cpp), and where its corners lie. */
async function codesOf({ width, height, greys }: Picture) {
  const dots = new Uint32Array(width * height);
  greys.forEach((grey, i) => (dots[i] = 0xff000000 | (grey * 0x010101)));
  const data = new Uint8ClampedArray(dots.buffer);
  const found = await readBarcodes({ data, width, height, colorSpace: 'srgb' } as ImageData, {
    formats: ['QRCode'],
    maxNumberOfSymbols: 0,
    tryRotate: false,
    tryInvert: false,
    tryDownscale: false,
  });
  return found.filter(({ isValid }) => isValid);
}

interface Dots {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box around what is dark within a box grown by so many dots. */
function darkBox({ width, greys }: Picture, { left, top, right, bottom }: Dots, by: number): Dots | undefined {
  let box: Dots | undefined;
  for (let y = Math.ceil(top - by); y <= bottom + by; y++) {
    for (let x = Math.ceil(left - by); x <= right + by; x++) {
      if (greys[y * width + x]! >= 128) continue;
      const { left: l, top: t, right: r, bottom: b } = box ?? { left: x, top: y, right: x, bottom: y };
      box = { left: Math.min(l, x), top: Math.min(t, y), right: Math.max(r, x), bottom: Math.max(b, y) };
    }
  }
  return box;
}

const canDraw = spawnSync('pdftoppm', ['-v']).error === undefined;

describe.skipIf(!canDraw)('the codes on labels, 5 mm of each edge of the sheet lost', () => {
  beforeAll(async () => {
    const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
    const wasm = readFileSync(file);
    await prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer }, fireImmediately: true });
  });

  test.each(labelStocks)('are all read: $name', async (stock) => {
    const plan = planOfSample('fell-short');
    const address = ({ id }: { readonly id: string }) => `http://192.168.100.200:4718/shop/#block=${id}`;
    const page = labels(plan, stock, address);
    const onOneSheet = page.labels.slice(0, stock.columns * stock.rows);
    const { bytes } = await printed([{ ...page, labels: onOneSheet }]);
    const read = (await Promise.all(pictures(bytes).map(codesOf))).flat().map(({ text }) => text);
    expect(read.sort()).toEqual(onOneSheet.map(({ number }) => address({ id: number })).sort());
  });

  test.each(SAMPLES)('say board, block and sawn size in plain words where no tracker is named: %s', async (name) => {
    const plan = planOfSample(name);
    const { bytes } = await printed([labels(plan, labelStocks[0]!)]);
    const read = (await Promise.all(pictures(bytes).map(codesOf))).flat().map(({ text }) => text);
    const expected = plan.blocks.map((block) => {
      const size = sawnSizeOf(block, plan.job.units);
      const [length, height, thick] = [size.length, size.height, size.thickness].map((mm) =>
        printAs('block', mm, plan.job.units),
      );
      return `${plan.job.name}\nblock ${block.id}\nsawn ${length} x ${height}, thick ${thick}`;
    });
    expect(read.sort()).toEqual(expected.sort());
  });

  test.each(labelStocks)('have four light modules around them (ISO/IEC 18004, quiet zone): $name', async (stock) => {
    const plan = planOfSample('tarn-rescue');
    const [picture] = pictures((await printed([labels(plan, stock)])).bytes);
    const codes = await codesOf(picture!);
    expect(codes).toHaveLength(Math.min(plan.blocks.length, stock.columns * stock.rows));
    for (const { position, symbol, text } of codes) {
      const { topLeft, topRight, bottomLeft } = position;
      const rough = (topRight.x - topLeft.x) / symbol.width;
      const near = { left: topLeft.x, top: topLeft.y, right: topRight.x, bottom: bottomLeft.y };
      // The reader's corners are good to a module: the code itself is what is dark about there, and square unless
      // something stands beside it.
      const code = darkBox(picture!, near, 2 * rough)!;
      const [wide, tall] = [code.right - code.left + 1, code.bottom - code.top + 1];
      expect(Math.abs(wide - tall)).toBeLessThanOrEqual(2);
      const quiet = Math.floor((4 * wide) / symbol.width) - 1;
      expect([text, darkBox(picture!, code, quiet)]).toEqual([text, code]);
    }
  });
});

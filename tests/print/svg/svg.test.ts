import { existsSync } from 'node:fs';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { chromium } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { svgOf } from '../../../src/print/svg/svg.js';
import { AWKWARD } from '../printed.js';
import { rounded, stripDrawing } from '../strip.js';

const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** An opening of 300 by 80 mm with corners of 8 mm, its name, and a line 1000 mm from another. */
const sheet: Drawing = {
  id: 'guide-1',
  title: AWKWARD,
  notes: [],
  shapes: [
    { kind: 'path', layer: 'guide', closed: true, vertices: rounded(100, 20, 400, 100, 8) },
    {
      kind: 'path',
      layer: 'mark',
      closed: false,
      vertices: [
        { x: 0, y: 0 },
        { x: 0, y: 50 },
      ],
    },
    {
      kind: 'path',
      layer: 'mark',
      closed: false,
      vertices: [
        { x: 1000, y: 0 },
        { x: 1000, y: 50 },
      ],
    },
    { kind: 'text', layer: 'label', text: AWKWARD, x: 250, y: 60, height: 10, align: 'centre', angleInDegrees: 90 },
  ],
};

interface Group {
  id: string;
  path?: { d: string }[];
  text?: { '#text': string; transform?: string }[];
}

function parsed(svg: string): { width: string; height: string; viewBox: string; title: string; g: Group[] } {
  expect(XMLValidator.validate(svg)).toBe(true);
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    isArray: (name) => ['g', 'path', 'text'].includes(name),
  });
  return (parser.parse(svg) as { svg: ReturnType<typeof parsed> }).svg;
}

describe('SVG', () => {
  it('is as many millimetres wide and high as its viewBox says', () => {
    const { width, height, viewBox } = parsed(svgOf(stripDrawing()));
    const [x, y, w, h] = viewBox.split(' ').map(Number);
    expect([x, y]).toEqual([0, 0]);
    expect([width, height]).toEqual([`${String(w)}mm`, `${String(h)}mm`]);
    // 3500 mm of strip and 5 mm of air on each side.
    expect(w).toBeCloseTo(3510, 3);
  });

  it('says any name as it is', () => {
    const svg = parsed(svgOf(sheet));
    expect(svg.title).toBe(AWKWARD);
    expect(svg.g.find(({ id }) => id === 'label')!.text![0]!['#text']).toBe(AWKWARD);
  });

  it('keeps corners as true arcs, and geometry free of transforms', () => {
    const { g } = parsed(svgOf(sheet));
    const { d } = g.find(({ id }) => id === 'guide')!.path![0]!;
    expect(d.match(/A8 8 0 0 0 /g)).toHaveLength(4);
    expect(d.endsWith('Z')).toBe(true);
    expect(JSON.stringify(g.filter(({ id }) => id !== 'label'))).not.toContain('transform');
  });

  it('measures true: the sides of the opening from the path', () => {
    const { g } = parsed(svgOf(sheet));
    const numbers = [
      ...g.find(({ id }) => id === 'guide')!.path![0]!.d.matchAll(/[ML]?(?:A\S+ \S+ 0 0 0 )?([\d.]+) ([\d.]+)/g),
    ];
    const xs = numbers.map((match) => Number(match[1]));
    const ys = numbers.map((match) => Number(match[2]));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(300, 3);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(80, 3);
  });

  it('has one group a layer, hatching apart', () => {
    const ids = parsed(svgOf(stripDrawing())).g.map(({ id }) => id);
    expect(ids).toEqual(['outline', 'chamber', 'dot', 'mark', 'label', 'hatch']);
  });

  it('refuses a coordinate that is not a number', () => {
    const broken: Drawing = { ...sheet, shapes: [{ kind: 'circle', layer: 'dot', x: NaN, y: 0, radius: 3 }] };
    expect(() => svgOf(broken)).toThrow('not a number');
  });

  it.skipIf(!existsSync(CHROMIUM))(
    'shows two marks 1000 mm apart 3779.5 px apart in Chromium: 96 px an inch (CSS Values 3)',
    async () => {
      const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
      const page = await browser.newPage({ viewport: { width: 4200, height: 600 } });
      await page.setContent(`<body style="margin:0">${svgOf(sheet).replace(/<\?xml.*?\?>/, '')}</body>`);
      const shot = (await page.screenshot()).toString('base64');
      // The darkest columns of a row of pixels that crosses both marks and nothing else: 15 mm above the lower edge of
      // the sheet.
      const columns = await page.evaluate(async (png) => {
        const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
        const canvas = new OffscreenCanvas(image.width, image.height);
        const context = canvas.getContext('2d')!;
        context.drawImage(image, 0, 0);
        const row = Math.round(((document.querySelector('svg')!.height.baseVal.value / 96) * 25.4 - 15) * (96 / 25.4));
        const { data } = context.getImageData(0, row, image.width, 1);
        return Array.from({ length: image.width }, (_, i) => 255 - data[4 * i]!);
      }, shot);
      await browser.close();
      const centre = (from: number, to: number): number => {
        const part = columns.slice(from, to);
        return part.reduce((sum, dark, i) => sum + dark * (from + i), 0) / part.reduce((sum, dark) => sum + dark, 0);
      };
      const distance = centre(3000, 4200) - centre(0, 300);
      expect(Math.abs(distance - (1000 * 96) / 25.4)).toBeLessThan(0.6);
    },
  );
});

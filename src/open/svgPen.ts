import { fontSizeFor, oneLine } from '../print/trace/lettering.js';
import { narrow, type Line } from '../print/trace/line.js';
import type { Measure, Pen } from '../print/pen/pen.js';

/**
 * A pen that draws a page as SVG, for looking at before it is printed: the same strokes at the same places as on paper.
 */
export interface SvgPen extends Pen {
  /** The page as one SVG document. */
  finished(): string;
}

/** @param width of the page, mm; `height` the same */
export function svgPen(width: number, height: number, measure: Measure): SvgPen {
  const parts: string[] = [];
  let clips = 0;
  const place = (points: ArrayLike<number>): string => {
    const pairs: string[] = [];
    for (let i = 0; i + 1 < points.length; i += 2)
      pairs.push(`${number(points[i]!)} ${number(height - points[i + 1]!)}`);
    return `M${pairs.join('L')}`;
  };
  const pen: SvgPen = {
    line(points, how: Line = narrow, phase = 0) {
      const dashes =
        how.dashes.length > 0
          ? ` stroke-dasharray="${how.dashes.map(number).join(' ')}" stroke-dashoffset="${number(phase)}"`
          : '';
      parts.push(`<path d="${place(points)}" stroke-width="${number(how.width)}"${dashes}/>`);
    },
    fill: (points) => void parts.push(`<path d="${place(points)}Z" fill="#000" stroke="none"/>`),
    fillBoxes(boxes) {
      const d = boxes.map(
        ({ minX, minY, maxX, maxY }) =>
          `M${number(minX)} ${number(height - maxY)}h${number(maxX - minX)}v${number(maxY - minY)}H${number(minX)}Z`,
      );
      if (d.length > 0) parts.push(`<path d="${d.join('')}" fill="#000" stroke="none"/>`);
    },
    rectangle({ minX, minY, maxX, maxY }, how) {
      pen.line([minX, minY, maxX, minY, maxX, maxY, minX, maxY, minX, minY], how);
    },
    circle(x, y, radius, { width } = narrow) {
      parts.push(
        `<circle cx="${number(x)}" cy="${number(height - y)}" r="${number(radius)}" stroke-width="${number(width)}"/>`,
      );
    },
    text(text, x, y, { height: tall, align = 'left', angleInDegrees = 0, bold = false, fit }) {
      const words = oneLine(text);
      if (words.trim() === '') return;
      const wide = measure(words, bold);
      const size = fit !== undefined && wide * tall > fit ? fit / wide : tall;
      const turn =
        angleInDegrees === 0
          ? ''
          : ` transform="rotate(${number(-angleInDegrees)} ${number(x)} ${number(height - y)})"`;
      const anchor = { left: 'start', centre: 'middle', right: 'end' }[align];
      parts.push(
        `<text x="${number(x)}" y="${number(height - y + size / 2)}" font-size="${number(fontSizeFor(size))}" text-anchor="${anchor}" ` +
          `textLength="${number(wide * size)}" lengthAdjust="spacingAndGlyphs"${bold ? ' font-weight="bold"' : ''}${turn}>${escaped(words)}</text>`,
      );
    },
    within({ minX, minY, maxX, maxY }, draw) {
      const id = `w${++clips}`;
      parts.push(
        `<clipPath id="${id}"><rect x="${number(minX)}" y="${number(height - maxY)}" width="${number(maxX - minX)}" ` +
          `height="${number(maxY - minY)}"/></clipPath><g clip-path="url(#${id})">`,
      );
      draw();
      parts.push('</g>');
    },
    tagged: (_tag, draw) => draw(),
    link: () => undefined,
    finished: () =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}">` +
      `<rect width="100%" height="100%" fill="#fff"/><g fill="none" stroke="#000" font-family="DejaVu Sans, Verdana, sans-serif">` +
      `<style>text{fill:#000;stroke:none}</style>${parts.join('')}</g></svg>`,
  };
  return pen;
}

function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error('a page has a coordinate that is not a number');
  return String(Math.round(value * 100) / 100);
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

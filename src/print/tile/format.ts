import words from '../../../templates/printing.json' with { type: 'json' };
import { BARS_HEIGHT, BLOCK_HEIGHT, STRIPS_BAND } from './band.js';
import type { Finding } from '../../finding/finding.js';
import type { Format, Orientation } from './nest.js';
import { LONGEST_PAGE_MM, type Paper } from '../paper/paper.js';
import type { Pane } from './tile.js';
import type { PrinterFactors } from '../paper/printer.js';
import { exact } from '../paper/printer.js';
import { say } from '../../words/say.js';

/**
 * Sheet frame after ISO 5457:1999, 4.2: 20 mm at the left, where sheets are filed, 10 mm elsewhere; more where the
 * printer needs it.
 */
const BORDER = 10;
const FILING_BORDER = 20;

/** Room between the frame and what the printer cannot reach, mm: page numbers and the neighbours' names stand there. */
const NOTE_ROOM = 5;

/** How wide a sheet is on which title block and test bars stand side by side, mm. */
const WIDE_SHEET = 245;

/** The narrowest pane that still holds the title block, and the lowest that holds an upright 4 in bar, mm. */
const NARROWEST = 150;
const LOWEST = 105;

/** How pages join, mm. */
export interface SheetSettings {
  /** What the printer cannot print along each edge. */
  readonly margin: number;
  /** Strip by which a page lies over the one before. */
  readonly overlap: number;
}

export const usualSettings: SheetSettings = { margin: 5, overlap: 10 };

/** A page of a run as it lies before the builder, true mm on the paper, from the lower left corner. */
export interface SheetFormat extends Format {
  /** The paper's height as it lies; its width too, unless the paper is a roll. */
  readonly height: number;
  readonly width: number | 'as needed';
  readonly margin: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly band: number;
  readonly factors: { readonly x: number; readonly y: number };
}

/**
 * The ways a paper can lie, and what its printer's measured factors make of it. Empty, with findings, when it is too
 * small.
 */
export function formatsOf(
  paper: Paper,
  settings: SheetSettings = usualSettings,
  printer: PrinterFactors = exact,
): { readonly formats: readonly SheetFormat[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  if (!(settings.margin >= 0 && settings.margin <= 50)) {
    findings.push({
      where: 'margin',
      what: say(words.margin.what, { margin: settings.margin }),
      remedy: words.margin.remedy,
    });
  }
  if (!(settings.overlap >= 5 && settings.overlap <= 50)) {
    findings.push({
      where: 'overlap',
      what: say(words.overlap.what, { overlap: settings.overlap }),
      remedy: words.overlap.remedy,
    });
  }
  if (findings.length > 0) return { formats: [], findings };
  const ways: SheetFormat[] =
    paper.kind === 'roll'
      ? [rollFormat(paper.width, settings, printer)]
      : [
          sheetFormat('landscape', paper.height, paper.width, settings, { x: printer.along, y: printer.across }),
          sheetFormat('portrait', paper.width, paper.height, settings, { x: printer.across, y: printer.along }),
        ];
  const formats = ways.filter((format) => {
    const pane = format.paneFor(NARROWEST);
    return pane.width >= NARROWEST && pane.height >= LOWEST;
  });
  if (formats.length === 0) {
    findings.push({
      where: 'paper',
      what: say(words.paper.what, { paper: paper.name }),
      remedy: say(words.paper.remedy, { width: NARROWEST, height: LOWEST }),
    });
  }
  return { formats, findings };
}

function sheetFormat(
  orientation: Orientation,
  nominalWidth: number,
  nominalHeight: number,
  { margin, overlap }: SheetSettings,
  factors: { readonly x: number; readonly y: number },
): SheetFormat {
  // A printer that draws everything short also draws a shorter page: the layout is made on the paper as it comes out.
  const width = nominalWidth * factors.x;
  const height = nominalHeight * factors.y;
  const edges = edgesOf(margin, width);
  const withBand = (band: number): SheetFormat => {
    const pane: Pane = {
      width: Math.floor(width - edges.left - edges.right),
      height: Math.floor(height - edges.top - edges.bottom - band),
      overlap,
    };
    return { orientation, width, height, margin, factors, ...edges, band, paneFor: () => pane };
  };
  return { ...withBand(edges.band), forStrips: withBand(STRIPS_BAND) };
}

function rollFormat(across: number, { margin, overlap }: SheetSettings, printer: PrinterFactors): SheetFormat {
  const factors = { x: printer.along, y: printer.across };
  const height = across * factors.y;
  const edges = edgesOf(margin, WIDE_SHEET + FILING_BORDER + BORDER);
  const longest = Math.floor(LONGEST_PAGE_MM * factors.x - edges.left - edges.right);
  const paneHeight = Math.floor(height - edges.top - edges.bottom - edges.band);
  return {
    orientation: 'landscape',
    width: 'as needed',
    height,
    margin,
    factors,
    ...edges,
    paneFor: (length) => {
      const pages = Math.max(1, Math.ceil((length - overlap) / (longest - overlap)));
      const width = Math.ceil((length + (pages - 1) * overlap) / pages);
      return { width: Math.max(WIDE_SHEET, width), height: paneHeight, overlap };
    },
  };
}

function edgesOf(margin: number, width: number): Pick<SheetFormat, 'left' | 'right' | 'top' | 'bottom' | 'band'> {
  const side = Math.max(BORDER, margin + NOTE_ROOM);
  const left = Math.max(FILING_BORDER, margin + 2 * NOTE_ROOM);
  const band = width - left - side >= WIDE_SHEET ? BLOCK_HEIGHT : BLOCK_HEIGHT + BARS_HEIGHT;
  return { left, right: side, top: side, bottom: side, band };
}

/** The page's own size for a run, mm. */
export const pageWidth = (format: SheetFormat, pane: Pane): number =>
  format.width === 'as needed' ? pane.width + format.left + format.right : format.width;

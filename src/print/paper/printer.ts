import words from '../../../templates/printing.json' with { type: 'json' };
import type { Finding } from '../../finding/finding.js';
import { say } from '../../words/say.js';

/**
 * What a printer makes of a true length: measured over true, across the sheet (along its short side, or across the
 * roll) and along it. Papers are drawn by as much larger or smaller; SVG and DXF never are.
 */
export interface PrinterFactors {
  readonly across: number;
  readonly along: number;
}

export const exact: PrinterFactors = { across: 1, along: 1 };

/** Beyond this the print was scaled by a setting, not by the printer: common practice, no source. */
const LARGEST_ERROR = 0.03;
/** So that 0.97, which a computer cannot hold, counts as within 3 %. */
const ROUNDING = 1e-12;

/** The factors from two bars as measured on the calibration page, and their true lengths, mm. */
export const factorsFrom = (measured: PrinterFactors, bars: PrinterFactors): PrinterFactors => ({
  across: measured.across / bars.across,
  along: measured.along / bars.along,
});

/** Refuses factors that no printer has. */
export function printerFindings(printer: PrinterFactors): readonly Finding[] {
  return (['across', 'along'] as const).flatMap((axis): Finding[] => {
    const factor = printer[axis];
    if (Number.isFinite(factor) && Math.abs(factor - 1) <= LARGEST_ERROR + ROUNDING) return [];
    const off = Number.isFinite(factor) ? `${((factor - 1) * 100).toFixed(1)} %` : String(factor);
    return [
      {
        where: `printer.${axis}`,
        what: say(words.printer.what, { off, axis }),
        remedy: words.printer.remedy,
      },
    ];
  });
}

/** How the factors are stamped on a sheet, or undefined when nothing is compensated. */
export function printerStamp(printer: PrinterFactors): string | undefined {
  if (printer.across === 1 && printer.along === 1) return undefined;
  return `across ${printer.across.toFixed(4)}, along ${printer.along.toFixed(4)}`;
}

import type { Point } from '../contour/point.js';
import type { Job } from '../job/job.js';
import type { FinSpec } from '../job/spec/finish.js';
import type { Units } from '../length/units.js';
import { USUAL_GLASS } from '../job/usual-glass.js';
import { blankSize, type BlankSize } from './blank.js';
import { baseOf, type FinBase } from './base.js';
import { layersOf, blankThickness, sidesOf, volumeOf, type Layer } from './layers.js';
import { areaAndCentre, chordAt, outlineOf, type FinOutline } from './outline.js';
import { layersIn, panelThickness, resinShare } from './panel.js';
import { sectionAt, sectionHeights, type FinSection } from './section.js';
import { sledOf, taperedTo, type Sled } from './sled.js';
import { standingOf, type Standing } from './stands.js';

/** A fin that the builder makes: everything from its measures to where it stands. Fin frame, mm, kg. */
export interface BuiltFin {
  /** Its place in the job's list. */
  readonly index: number;
  readonly spec: FinSpec;
  readonly outline: FinOutline;
  /** mm², and the centre of area. */
  readonly area: number;
  readonly centre: { readonly x: number; readonly y: number };
  /** Thickness as it is glued up, glue lines not counted. */
  readonly blank: BlankSize & { readonly thickness: number };
  readonly panel?: FinPanel;
  /** Of one side, from the middle or the flat side outward. */
  readonly layers: readonly FinLayer[];
  readonly sled: Sled;
  /** Thickness off the sled. */
  readonly tapered: { readonly base: number; readonly tip: number };
  /** From base to tip. */
  readonly sections: readonly FinSection[];
  /** What is done at its base once it stands; absent where it has no fillet. */
  readonly base?: FinBase;
  /** One for each fin of this kind. */
  readonly standing: readonly Standing[];
  /** Of one, its tab and what is at its base not counted; and with them as it stands on the board, kg. */
  readonly weight: number;
  readonly fitted: number;
}

/** The cloth of one panel as it is laid up: larger than the blank all around, because its edges come out thin. */
export interface FinPanel {
  readonly layers: number;
  readonly cloth: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** kg, of all layers; the resin that stays in them. */
  readonly clothWeight: number;
  readonly resin: number;
}

export interface FinLayer extends Layer {
  /** On how many sides of the fin. */
  readonly sides: 1 | 2;
  /** Of all sides, within the finished foil, kg. */
  readonly weight: number;
}

/** Edges of a laid-up panel are thin and ragged: trimmed off all around, mm. Common practice, no source. */
const PANEL_TRIM = 15;
const MM3_PER_M3 = 1e9;

/** The fins that are built. One whose edges meet below its tip is left out: `finsInDoubt` says so. */
export function finsOf(
  fins: readonly FinSpec[],
  keepOuts: Job['keepOuts'],
  units: Units,
  glass = USUAL_GLASS,
): BuiltFin[] {
  return fins.flatMap((spec, index) => {
    if (!spec.build || crossing(spec) !== undefined) return [];
    return [builtFin(spec, index, keepOuts, units, glass.resin)];
  });
}

function builtFin(spec: FinSpec, index: number, keepOuts: Job['keepOuts'], units: Units, wetOut: number): BuiltFin {
  const outline = outlineOf(spec);
  const { area, ...centre } = areaAndCentre(outline);
  const blank = { ...blankSize(spec), thickness: blankThickness(spec) };
  const { panel, fillet } = spec.build!;
  const layers = layersOf(spec).map((layer): FinLayer => ({
    ...layer,
    sides: sidesOf(spec),
    weight: (volumeOf(spec, outline, layer) / MM3_PER_M3) * layer.density,
  }));
  const tab = spec.build!.tab?.isTemporary === false ? tabWeight(spec, layers) : 0;
  const base = fillet && baseOf(spec, wetOut);
  const weight = layers.reduce((sum, layer) => sum + layer.weight, 0);
  return {
    index,
    spec,
    outline,
    area,
    centre,
    blank,
    ...(panel && { panel: panelOf(panel, blank) }),
    layers,
    sled: sledOf(spec),
    tapered: taperedTo(spec),
    sections: sectionHeights(spec, units).map((y) => sectionAt(spec, outline, y)),
    ...(base && { base }),
    standing: standingOf(spec, keepOuts),
    weight,
    fitted: (spec.weight ?? weight + tab) + (base?.weight ?? 0),
  };
}

function panelOf(panel: NonNullable<NonNullable<FinSpec['build']>['panel']>, blank: BlankSize): FinPanel {
  const layers = layersIn(panel);
  const length = blank.length + 2 * PANEL_TRIM;
  const width = blank.width + 2 * PANEL_TRIM;
  const clothWeight = (layers * panel.cloth * length * width) / 1e9;
  return {
    layers,
    cloth: panel.cloth,
    length,
    width,
    thickness: panelThickness(panel),
    clothWeight,
    resin: clothWeight * resinShare(panel),
  };
}

/** A tab that stays is as long as the base and as thick as the fin there, flat on both sides, kg. */
function tabWeight({ base, thickness, build }: FinSpec, layers: readonly FinLayer[]): number {
  const half = thickness / layers[0]!.sides;
  const within = ({ from, to, density, sides }: FinLayer) => sides * Math.max(0, Math.min(to, half) - from) * density;
  return (base * build!.tab!.depth * layers.reduce((sum, layer) => sum + within(layer), 0)) / MM3_PER_M3;
}

/** The height at which the edges of a fin meet or cross; nothing where they do not. */
export function crossing(fin: FinSpec): number | undefined {
  const outline = outlineOf(fin);
  const heights = [...outline.leading, ...outline.trailing].map(([, y]: Point) => y);
  return heights.sort((a, b) => a - b).find((y) => y < fin.depth && chordAt(outline, y).length <= 0);
}

/** Weight of all fins of a kind as they stand on the board, kg, and the middle of it from the nose, mm. */
export function fittedWeight({ standing, fitted, spec, centre }: BuiltFin): { weight: number; x: number } {
  const back = centre.x - spec.base / 2;
  return { weight: fitted * standing.length, x: spec.x + back * Math.cos(spec.build!.stands.toe) };
}

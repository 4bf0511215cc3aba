import type { FinSpec } from '../job/spec/finish.js';
import { halfThickness } from './foil.js';
import { chordAt, type FinOutline } from './outline.js';
import { laminateDensity, panelThickness } from './panel.js';

/** One material of the build-up, from the middle plane (or the flat side) outward, mm. */
export interface Layer {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** kg/m³. */
  readonly density: number;
}

/** The layers of one side, from the panel's middle or from the flat side on. */
export function layersOf({ build }: FinSpec): Layer[] {
  const { panel, wood, section } = build!;
  const share = section === 'symmetric' ? 0.5 : 1;
  let at = 0;
  const next = (name: string, thickness: number, density: number): Layer => ({
    name,
    from: at,
    to: (at += thickness),
    density,
  });
  return [
    ...(panel ? [next('panel', share * panelThickness(panel), laminateDensity(panel))] : []),
    ...wood.map(({ material, thickness }) => next(material.name, thickness, material.density)),
  ];
}

/** Thickness of the blank, mm: as measured; by its layers, glue lines not counted, where it was not. */
export function blankThickness(fin: FinSpec): number {
  return fin.build!.blankThickness ?? layersThickness(fin);
}

/** What its layers make, glue lines not counted, mm. */
export function layersThickness(fin: FinSpec): number {
  return (layersOf(fin).at(-1)?.to ?? 0) * sidesOf(fin);
}

export const sidesOf = ({ build }: FinSpec): 1 | 2 => (build!.section === 'symmetric' ? 2 : 1);

/** Finished thickness at a height over the base: it runs straight from base to tip, mm. */
export function thicknessAt({ depth, thickness, tipThickness }: FinSpec, y: number): number {
  return thickness + ((tipThickness - thickness) * y) / depth;
}

/** Steps of Simpson's rule along the chord and along the depth: the volume is good to a thousandth of it. */
const STEPS = 96;

/**
 * Volume of a layer within the finished foil, mm³, without the tab. Steps lie close together at the leading edge and at
 * the tip, where thickness and chord grow like a square root.
 */
export function volumeOf(fin: FinSpec, outline: FinOutline, { from, to }: Layer): number {
  const sides = sidesOf(fin);
  const across = simpson((root) => {
    const y = fin.depth * (1 - root * root);
    const reach = thicknessAt(fin, y) * (2 / sides);
    const along = simpson((s) => 2 * s * Math.min(Math.max(reach * halfThickness(s * s) - from, 0), to - from));
    return 2 * root * chordAt(outline, y).length * along;
  });
  return sides * fin.depth * across;
}

/** Integral over 0..1 by Simpson's rule. */
function simpson(f: (x: number) => number): number {
  let sum = f(0) + f(1);
  for (let i = 1; i < STEPS; i++) sum += (i % 2 === 1 ? 4 : 2) * f(i / STEPS);
  return sum / (3 * STEPS);
}

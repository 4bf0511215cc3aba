import type { Point } from '../../contour/point.js';
import type { Material } from './material.js';

/**
 * How a fin is made. Fin frame, mm: `x` from the front end of its base toward the tail, `y` from the base toward the
 * tip, square to the bottom.
 */
export interface FinBuildSpec {
  readonly outline: FinOutlineSpec;
  /** Foiled alike on both sides, or flat on the side toward the centreline or away from it. */
  readonly section: 'symmetric' | 'flatInside' | 'flatOutside';
  /** Cloth laid up flat: in the middle of a symmetric fin, on the flat side of a flat one. */
  readonly panel?: PanelSpec;
  /** Layers of wood from the panel outward; a symmetric fin has them on both sides. */
  readonly wood: readonly { readonly material: Material; readonly thickness: number }[];
  /** How thick the glued-up blank came out; as its layers say where nobody has measured. */
  readonly blankThickness?: number;
  /** How far the blank stands out around the outline. */
  readonly over: number;
  /** Left on each foiled side by the taper sled, to be taken off with the foil. */
  readonly leave: number;
  /** Held by while working, beyond the base; what is temporary is cut off in the end. */
  readonly tab?: { readonly depth: number; readonly isTemporary: boolean };
  /** What the surface sander takes off in one pass, at most. */
  readonly pass: number;
  readonly fillet?: FilletSpec;
  readonly stands: FinStandSpec;
}

/**
 * `rake`: how far the middle of the tip lies behind the middle of the base. An edge by its fullness, as in
 * `NumberedSection`: 0.5 straight, 0.71 an ellipse, below 0.5 hollow; or by its points between base and tip, `y`
 * strictly rising.
 */
export interface FinOutlineSpec {
  readonly rake: number;
  readonly leading: number | readonly Point[];
  readonly trailing: number | readonly Point[];
}

export interface PanelSpec {
  /** Weight of the cloth, g/m². */
  readonly cloth: number;
  /** So many layers; or as many as a thickness, mm, takes. One of them is given. */
  readonly layers?: number;
  readonly thickness?: number;
  /** Share of the volume that is fibre, 0..1. */
  readonly fibre: number;
  /** Of the fibre and of the cured resin, kg/m³. */
  readonly fibreDensity: number;
  readonly resinDensity: number;
}

/** The round between fin and board. */
export interface FilletSpec {
  readonly radius: number;
  /** Of a rope of wetted fibre, or of thickened resin. */
  readonly of: 'rope' | 'resin';
  /** Layers of cloth over it on each side, g/m². */
  readonly cloth: readonly number[];
  /** How far the first of them reaches beyond it, onto the fin and onto the board. */
  readonly reach: number;
}

export interface FinStandSpec {
  /** The middle of its base from the centreline, mm; above 0 for a pair, one on each side or one alone. */
  readonly away: number;
  readonly side: 'centre' | 'right' | 'left' | 'both';
  /** How far it leans outward from square, and how far its front end is turned to the centreline, radians. */
  readonly cant: number;
  readonly toe: number;
}

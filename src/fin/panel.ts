import type { PanelSpec } from '../job/spec/fin.js';

/** A cloth and its resin once cured. */
type Laminate = Pick<PanelSpec, 'cloth' | 'fibre' | 'fibreDensity'>;

/**
 * Cured thickness of one layer of cloth, mm: its weight by area over the density and the share by volume of its fibre.
 *
 * Source: ASTM D3171, test method II, solved for the thickness of one layer; J. A. Quinn, Composites Design Manual
 * (2002), section 4, surface area based.
 */
export function layerThickness({ cloth, fibre, fibreDensity }: Laminate): number {
  return cloth / (fibreDensity * fibre);
}

/** How many layers a panel of a wanted thickness, mm, takes: none thinner. */
export function layersFor(thickness: number, laminate: Laminate): number {
  return Math.ceil(thickness / layerThickness(laminate) - 1e-9);
}

/** The layers of a panel, as given or as its thickness takes them. */
export function layersIn(panel: PanelSpec): number {
  return panel.layers ?? layersFor(panel.thickness!, panel);
}

export function panelThickness(panel: PanelSpec): number {
  return layersIn(panel) * layerThickness(panel);
}

/** Density of cloth and resin together, kg/m³: rule of mixtures. */
export function laminateDensity({
  fibre,
  fibreDensity,
  resinDensity,
}: Pick<PanelSpec, 'fibre' | 'fibreDensity' | 'resinDensity'>): number {
  return fibre * fibreDensity + (1 - fibre) * resinDensity;
}

/** Weight of the resin that stays in a cloth, as a share of the cloth's. */
export function resinShare({
  fibre,
  fibreDensity,
  resinDensity,
}: Pick<PanelSpec, 'fibre' | 'fibreDensity' | 'resinDensity'>): number {
  return ((1 - fibre) * resinDensity) / (fibre * fibreDensity);
}

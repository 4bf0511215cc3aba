import type { Layer } from '../../sheet/drawing.js';

export interface DxfLayer {
  readonly name: string;
  /** Number of a colour in the DXF colour index; 7 is black on white. */
  readonly colour: number;
}

/** What a shape means is the layer it lies on. Only the layers that begin with CUT are for the machine. */
export const dxfLayers: Readonly<Record<Layer | 'uncut' | 'text' | 'scale', DxfLayer>> = {
  outline: { name: 'OUTLINE', colour: 7 },
  cut: { name: 'CUT_OUTLINE', colour: 1 },
  edge: { name: 'FINISHED_EDGE', colour: 7 },
  chamber: { name: 'CUT_CHAMBER', colour: 1 },
  guide: { name: 'CUT_GUIDE', colour: 1 },
  block: { name: 'CUT_BLOCK', colour: 1 },
  joint: { name: 'JOINT', colour: 4 },
  web: { name: 'WEB', colour: 8 },
  dot: { name: 'DOT', colour: 3 },
  keepout: { name: 'KEEPOUT', colour: 6 },
  mark: { name: 'MARK', colour: 5 },
  dimension: { name: 'DIMENSION', colour: 8 },
  label: { name: 'LABEL', colour: 8 },
  uncut: { name: 'MARK_BY_HAND', colour: 1 },
  text: { name: 'TEXT', colour: 8 },
  scale: { name: 'SCALE_100_MM', colour: 2 },
};

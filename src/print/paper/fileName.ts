import type { Drawing } from '../../sheet/drawing.js';

/**
 * The name of a drawing's file for a cutter: `face-R2_mm.dxf`. The unit is in the name, since programs ask for it; what
 * a file system does not take becomes `-`.
 */
export const cutterFileName = (drawing: Drawing, kind: 'svg' | 'dxf'): string =>
  `${drawing.id.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^\.+/, '-')}_mm.${kind}`;

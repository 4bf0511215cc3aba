import { createRequire } from 'node:module';
import type Published from 'svg-builder';

/**
 * The SVG builder, through its CommonJS door: the ES-module build of version 3.0.4 imports folders, which Node refuses,
 * and its types describe the CommonJS build, where the builder is one step further in.
 */
export const svgBuilder = createRequire(import.meta.url)('svg-builder') as typeof Published.default;

/** A builder of elements; each call adds one beside the last. */
export type SvgBuilder = ReturnType<typeof svgBuilder.create>;

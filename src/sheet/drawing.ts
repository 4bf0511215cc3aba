import type { Point } from '../contour/point.js';
import type { Units } from '../length/units.js';
import type { Vertex } from '../contour/vertex.js';

/**
 * A drawing in millimetres: primitives on named layers. One drawing goes to every writer (PDF, SVG, DXF, screen), so
 * that they cannot disagree. `x` runs right, `y` runs **up**, as the piece lies on the bench. Nothing here knows paper,
 * points or pixels.
 */
export interface Drawing {
  /** Short and unique within a job, fit for a file name: `face-R2`. */
  readonly id: string;
  readonly title: string;
  /** What the sheet shows, in a few lines for the title block: piece, face, side. */
  readonly notes: readonly string[];
  readonly shapes: readonly Shape[];
  /** Words that may stand in one of several places. Those that matter most come first: they have the choice. */
  readonly captions?: readonly Caption[];
  /** What the kinds of line mean, for the one at the bench: said on every page for the lines that are on it. */
  readonly legend?: Legend;
  /** What it is and which way it looks, said on each page that it shares with other drawings. */
  readonly name?: string;
  /** Which way it looks, in short: said on each strip that has no room for more. */
  readonly sense?: string;
  /**
   * The same in parts that have nothing to do with each other: whoever puts the drawing onto pages lays them as they
   * fit, whole and level.
   */
  readonly apart?: readonly Part[];
  /**
   * On paper that is pieced together only this stretch along `x` must be there: beyond it lines merely go on. Without
   * it all must.
   */
  readonly must?: readonly [from: number, to: number];
  /** Given, lengths along it count from the nose at `x` = 0: strips of it say in these units where they lie. */
  readonly units?: Units;
  /** A chart of figures: nothing in it has a length, so that no scale is said of it. */
  readonly isChart?: boolean;
  /** Marked from by hand only: what lies on it to be routed may be part of a line, and is for no machine. */
  readonly isNotCut?: boolean;
}

/**
 * Words, and what points to them, that may stand in one of several places, the best first. Whoever puts the drawing
 * onto pages takes the first place at which they are whole and nothing crosses them.
 */
export interface Caption {
  /** Made one at a time where there are many: the first good one is taken, and none after it is looked at. */
  readonly places: Iterable<readonly Shape[]>;
  /** How far all places have been moved since they were written down, mm: `placesOf` says where they are. */
  readonly by?: readonly [dx: number, dy: number];
  /** The mark that the words are said of: they stand on a page that shows it, where there is one with room. */
  readonly beside?: Point;
  /** Better left out than crossed. */
  readonly optional?: boolean;
}

/** Shapes with their words, and what they are called on each of several pages that show some of them. */
export type Part = Required<Pick<Drawing, 'name' | 'shapes' | 'captions'>>;

/** What kinds of line mean, the most dangerous first. */
export type Legend = readonly (readonly [layer: Layer, meaning: string])[];

/** What a shape means. The print stage gives each layer its line (ISO 128) and, for cutters, its DXF layer. */
export type Layer =
  | 'outline' //   the edge of what is drawn: outline in plan, section, stick
  | 'cut' //       what a profile or a template is sawn and planed to
  | 'edge' //      finished deck and bottom line, where something is marked within it
  | 'chamber' //   what the router takes out
  | 'guide' //     opening of a guide
  | 'block' //     outline of a fill block
  | 'joint' //     joints and the edges of members
  | 'web' //       webs and other solid, hatched or marked
  | 'dot' //       glue dots
  | 'keepout' //   where nothing may be cut
  | 'mark' //      pole marks, stations, centre lines
  | 'dimension' // dimension lines
  | 'label'; //    numbers and words

export type Shape = PathShape | CircleShape | TextShape;

export interface PathShape {
  readonly kind: 'path';
  readonly layer: Layer;
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
  /** Filled with a hatch, so that it reads in black and white. */
  readonly hatch?: 'light' | 'medium' | 'dark';
}

export interface CircleShape {
  readonly kind: 'circle';
  readonly layer: Layer;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly hatch?: 'light' | 'medium' | 'dark';
}

export interface TextShape {
  readonly kind: 'text';
  readonly layer: Layer;
  readonly text: string;
  /** Where the anchor of the text lies: by `align` in x, the middle of the capitals in y. */
  readonly x: number;
  readonly y: number;
  /** Height of capitals, mm (ISO 3098: 2.5, 3.5, 5, 7, 10, 14, 20). */
  readonly height: number;
  readonly align: 'left' | 'centre' | 'right';
  /** Counter-clockwise, degrees. */
  readonly angleInDegrees?: number;
}

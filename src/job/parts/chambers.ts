import { z } from 'zod';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { ChamberSpec } from '../job.js';
import type { Quantities } from '../quantities.js';

/**
 * What a job that says nothing gets, round in the shop's own units (mm, inches). Common practice, no source, unless the
 * reason says otherwise.
 */
const DEFAULTS = {
  /** About the length of block that a hand holds well at the saw. */
  pitch: { mm: 300, in: 12 },
  /** Wide enough for a glue dot with room around it. */
  web: { mm: 25, in: 1 },
  /** The deck carries knees and heels, so it is left thicker than the bottom. */
  deckSkin: { mm: 14, in: 9 / 16 },
  bottomSkin: { mm: 12, in: 1 / 2 },
  /** The rail is shaped last and takes the knocks. */
  railWall: { mm: 25, in: 1 },
  floor: { mm: 6, in: 1 / 4 },
  /** How far a hand-held router on a guide may wander. */
  tolerance: { mm: 1.5, in: 1 / 16 },
  cutter: { mm: 12, in: 1 / 2 },
  smallestLength: { mm: 75, in: 3 },
  smallestHeight: { mm: 25, in: 1 },
  smallestDepth: { mm: 25, in: 1 },
  /** Tips are thin and take the knocks. */
  solidNose: { mm: 200, in: 8 },
  solidTail: { mm: 200, in: 8 },
} as const;

/** Each chamber shifted half a pitch against its neighbours: no two webs in line. */
const STAGGER = 0.5;

export function chambersSchema(q: Quantities) {
  const wall = (what: string) =>
    q
      .length(what, {
        least: 1,
        most: 300,
        because: 'a thinner wall does not survive the router, a thicker one leaves no chamber',
      })
      .optional();
  const size = (what: string) =>
    q.length(what, { least: 5, most: 2000, because: 'smaller is not worth routing' }).optional();
  const solid = (what: string) =>
    q.length(what, { least: 0, most: 4000, because: 'it is measured along the board' }).optional();
  return z
    .strictObject({
      pitch: q
        .length('between the middles of neighbouring chambers', {
          least: 40,
          most: 2000,
          because: 'a chamber and a web must fit in it',
        })
        .optional(),
      datum: q
        .length(
          'from the nose tip to the first mark of the grid; half a pitch behind the solid nose unless this says otherwise',
          {
            least: 0,
            most: 8000,
            because: 'it lies on the board',
          },
        )
        .optional(),
      stagger: q
        .share('how far every second row is shifted, as a share of the pitch', {
          least: 0,
          most: 1,
          because: 'a whole pitch is no shift',
        })
        .optional(),
      web: wall('solid left between two chambers of a row, at its narrowest'),
      deckSkin: wall('left between chamber and deck'),
      bottomSkin: wall('left between chamber and bottom'),
      railWall: wall('left between chamber and rail'),
      floor: wall('left before a member that stays solid'),
      tolerance: q
        .length('added to every wall because a router wanders', {
          least: 0,
          most: 25,
          because: 'a router that wanders more needs mending',
        })
        .optional(),
      shape: z
        .enum(['follow', 'straight', 'square'])
        .meta({
          description:
            'follow: the edges follow the skins; straight: four straight sides, as a saw cuts; square: a rectangle. follow unless this says otherwise',
        })
        .optional(),
      cutter: q
        .length('diameter of the router cutter', {
          least: 3,
          most: 60,
          because: 'router cutters for this work lie in that range',
        })
        .optional(),
      smallest: z
        .strictObject({
          length: size('along the face'),
          height: size('from bottom to deck, where it is lowest'),
          depth: size('into the piece'),
        })
        .meta({ description: 'the smallest chamber worth routing; what comes out smaller is left solid' })
        .optional(),
      solidNose: solid('no chamber nearer to the nose tip than this'),
      solidTail: solid('no chamber nearer to the end of the tail than this'),
    })
    .meta({ description: 'what is routed out, and the walls that are left' });
}

export type ChambersFile = z.infer<ReturnType<typeof chambersSchema>>;

export function toChambers(file: ChambersFile = {}, units: Units): ChamberSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const pitch = file.pitch ?? usual('pitch');
  const solidNose = file.solidNose ?? usual('solidNose');
  return {
    pitch,
    datum: file.datum ?? solidNose + pitch / 2,
    stagger: file.stagger ?? STAGGER,
    web: file.web ?? usual('web'),
    deckSkin: file.deckSkin ?? usual('deckSkin'),
    bottomSkin: file.bottomSkin ?? usual('bottomSkin'),
    railWall: file.railWall ?? usual('railWall'),
    floor: file.floor ?? usual('floor'),
    tolerance: file.tolerance ?? usual('tolerance'),
    shape: file.shape ?? 'follow',
    cutterDiameter: file.cutter ?? usual('cutter'),
    smallest: {
      length: file.smallest?.length ?? usual('smallestLength'),
      height: file.smallest?.height ?? usual('smallestHeight'),
      depth: file.smallest?.depth ?? usual('smallestDepth'),
    },
    solidNose,
    solidTail: file.solidTail ?? usual('solidTail'),
  };
}

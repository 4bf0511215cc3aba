import type { Note } from '../chamber/chamber.js';
import type { CarvedAround } from './carvedAround.js';
import type { Dot, Glue, Smear } from './dot.js';
import { glueNotes } from './glueNotes.js';
import type { JointFace } from './jointFace.js';
import type { PlacedGlue } from './placedGlue.js';
import { sidesOf, type Sides } from './sides.js';
import type { DotSpot, Spot } from './spot.js';

/** The glue with what it meets on either side in the chambers as carved, and what must be said of it. */
export function glueOf(
  { rows, losses }: CarvedAround,
  { faces, dots, smears, landed, keeps, notes }: PlacedGlue,
  clearance: number,
): { readonly glue: Glue; readonly notes: readonly Note[] } {
  const sides = sidesOf(rows, keeps, losses);
  return {
    glue: {
      dots: dots.map((spot) => dotOf(spot, landed.has(spot), faces, sides)),
      smears: smears.map((spot) => smearOf(spot, sides)),
      losses,
    },
    notes: [...notes, ...glueNotes(rows, keeps, sides, clearance)],
  };
}

function dotOf(spot: DotSpot, glued: boolean, faces: readonly JointFace[], sides: Sides): Dot {
  const { face } = faces.find(({ joint }) => joint.id === spot.joint)!;
  const [s, z] = spot.from;
  return {
    id: spot.name,
    joint: spot.joint,
    s,
    z,
    x: s * face.along[0],
    diameter: 2 * spot.radius,
    glued,
    margin: spot.margin,
    sides: sides.get(spot) ?? [],
  };
}

function smearOf(spot: Spot, sides: Sides): Smear {
  const { name, joint, from, to, radius } = spot;
  return { id: name, joint, from, to, width: 2 * radius, sides: sides.get(spot) ?? [] };
}

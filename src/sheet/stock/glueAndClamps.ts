import words from '../../../templates/glueUp.json' with { type: 'json' };
import { printArealWeight } from '../../length/areal.js';
import { printLength } from '../../length/length.js';
import type { Piece } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { clampPlacesOf } from '../../view/clampPlacesOf.js';
import { gluedFaces, type GluedFace } from '../../view/gluedFaces.js';
import { faceToGlue, glueUpGlue, jointSpread } from '../../view/jointGlue.js';
import { say } from '../../words/say.js';
import type { TablePage, TableRow } from '../pages.js';
import { columnsOf, heading, pouredCell, row } from '../table.js';

/** Joints that are glued and clamped in one go. */
interface Go {
  readonly said: string;
  readonly members: string;
  readonly joints: readonly GluedFace[];
}

/** Every joint in the order in which it is glued, with its glue; then the clamps of each go, the middle first. */
export function glueAndClamps(plan: Plan): TablePage[] {
  const goes = goesOf(plan);
  return [glueTable(plan, goes), clampTable(plan, goes)];
}

/** Piece by piece from the centre, then what is dotted. */
function goesOf(plan: Plan): Go[] {
  const { layup, job } = plan;
  const faces = gluedFaces(plan);
  const minutes = (count: number) => Math.floor((10 * job.blocks.glue.openTime) / count) / 10;
  const dotted = faces.filter(({ joint }) => joint.kind === 'dotted');
  return [
    ...fromCentre(layup.pieces).flatMap((piece): Go[] => {
      const joints = faces.filter(({ joint }) => piece.members.slice(1).some(({ left }) => left === joint));
      if (joints.length === 0) return [];
      const said = say(words.joints.piece, { piece: piece.id, minutes: minutes(joints.length) });
      return [{ said, members: piece.members.map(({ id }) => id).join(' · '), joints }];
    }),
    ...(dotted.length > 0
      ? [
          {
            said: say(words.joints.dotted, { minutes: minutes(dotted.length) }),
            members: layup.pieces.map(({ id }) => id).join(' · '),
            joints: dotted,
          },
        ]
      : []),
  ];
}

function glueTable(plan: Plan, goes: readonly Go[]): TablePage {
  const { layup, job } = plan;
  const spread = jointSpread(plan);
  return {
    kind: 'table',
    title: words.joints.title,
    notes: words.joints.notes.map((note) => say(note, { spread: printArealWeight(spread, job.units) })),
    columns: columnsOf(
      [words.joints.joint, 'text'],
      [words.joints.between, 'text'],
      [words.joints.length, 'number'],
      [words.joints.dots, 'number'],
      [words.joints.glue, 'number'],
      [words.joints.done, 'tick'],
    ),
    rows: goes.flatMap(({ said, joints }): TableRow[] => [
      heading(said),
      ...joints.map((face): TableRow => {
        const { joint } = face;
        const { length } = faceToGlue(plan, face);
        const dots = plan.glue.dots.filter((dot) => dot.joint === joint.id);
        const beside = layup.members.filter(({ left, right }) => left === joint || right === joint);
        return row(
          joint.id,
          beside.map(({ id }) => id).join(' · '),
          { value: length, text: printLength(length, job.units) },
          joint.kind === 'dotted' ? dots.length : '',
          pouredCell(glueUpGlue(plan, face) / 1000, job.units),
          false,
        );
      }),
    ]),
  };
}

function clampTable({ job }: Plan, goes: readonly Go[]): TablePage {
  return {
    kind: 'table',
    title: words.clamps.title,
    notes: words.clamps.notes,
    columns: columnsOf(
      [words.clamps.over, 'text'],
      [words.clamps.count, 'number'],
      [words.clamps.places, 'text'],
      [words.clamps.done, 'tick'],
    ),
    rows: goes.map(({ members, joints }) => {
      const places = clampPlacesOf(joints, job.blocks.glue.clampSpacing, job.units);
      return row(members, places.length, places.map((x) => printLength(x, job.units)).join(', '), false);
    }),
  };
}

/** Pieces from the centre outward. */
function fromCentre(pieces: readonly Piece[]): Piece[] {
  const out = ({ members }: Piece) => {
    const [from, to] = [members[0]!.left?.at ?? -Infinity, members.at(-1)!.right?.at ?? Infinity];
    return from <= 0 && to >= 0 ? 0 : Math.min(Math.abs(from), Math.abs(to));
  };
  return [...pieces].sort((a, b) => out(a) - out(b));
}

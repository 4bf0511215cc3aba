import { z } from 'zod';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import { halfWidthAt } from '../half-width.js';
import type { Say } from '../mistake/say.js';
import type { Quantities } from '../quantities.js';
import type { BoardSpec } from '../spec/board.js';
import type { FinBuildSpec, FinStandSpec, PanelSpec } from '../spec/fin.js';
import type { FinSpec } from '../spec/finish.js';
import { GLASS_AND_EPOXY } from '../usual-glass.js';
import { finEdgesSchema, toFinOutline } from './fin-edges.js';
import { CLOTH_BOUNDS } from './glass.js';
import type { FindMaterial } from './materials.js';

/** What a build that says nothing gets, round in the shop's own units. Common practice, no source. */
const DEFAULTS = {
  over: { mm: 10, in: 3 / 8 },
  leave: { mm: 0.5, in: 1 / 64 },
  pass: { mm: 0.4, in: 1 / 64 },
  reach: { mm: 25, in: 1 },
} as const;

/** Cloth laid up by hand: fibre takes 30 to 45 % of the volume, from memory. */
const HAND_FIBRE = 0.4;
export function finBuildSchema(q: Quantities) {
  const length = (what: string, least: number, most: number, because: string) =>
    q.length(what, { least, most, because });
  const density = (what: string) =>
    q.density(what, { least: 800, most: 3000, because: 'fibres and resins lie in that range' }).optional();
  const away = (what: string) => length(what, 0, 600, 'it stands on the board').optional();
  const degrees = (what: string, most: number, because: string) =>
    z
      .number()
      .min(-most, `${because}|from -${most} to ${most}`)
      .max(most, `${because}|from -${most} to ${most}`)
      .meta({ description: `${what}, degrees` })
      .optional();
  return z
    .strictObject({
      outline: finEdgesSchema(q),
      section: z
        .enum(['symmetric', 'flatInside', 'flatOutside'])
        .meta({
          description: 'foiled alike on both sides (the usual), or flat toward the centreline or away from it',
        })
        .optional(),
      panel: z
        .strictObject({
          cloth: q.areal('weight of one layer of cloth', CLOTH_BOUNDS),
          layers: z
            .number()
            .multipleOf(1, 'a part of a layer is counted|whole layers')
            .min(1, 'fewer than one layer|1 or more; without a panel leave it out')
            .max(200, 'more than 200 layers|at most 200')
            .meta({ description: 'how many layers' })
            .optional(),
          thick: length(
            'or how thick it is to be at least; the layers follow',
            0.3,
            60,
            'panels lie in that range',
          ).optional(),
          fibre: q
            .share('how much of the volume is fibre; 40 % unless given', {
              least: 0.2,
              most: 0.7,
              because: 'cloth laid up by hand has 30 to 45 %, pressed or under vacuum up to 60 %',
            })
            .optional(),
          cured: length(
            'how thick it came out, by the caliper; its share of fibre follows',
            0.3,
            60,
            'panels lie in that range',
          ).optional(),
          fibreDensity: density('weight by volume of the fibre; glass unless given'),
          resinDensity: density('weight by volume of the cured resin; epoxy unless given'),
        })
        .meta({
          description: 'layers of cloth laid up flat: in the middle of a symmetric fin, on the flat side of another',
        })
        .optional(),
      wood: z
        .array(
          z.strictObject({
            wood: z.string().meta({ description: 'a material by name' }),
            thickness: length('its thickness', 0.5, 60, 'layers of fins lie in that range'),
          }),
        )
        .max(8, 'more than 8 layers of wood|at most 8')
        .meta({ description: 'layers of wood from the panel outward; a symmetric fin has them on both sides' })
        .optional(),
      blankThick: length(
        'how thick the glued-up blank came out, by the caliper',
        2,
        200,
        'blanks of fins lie in that range',
      ).optional(),
      over: length('how far the blank stands out around the outline', 0, 60, 'more is waste').optional(),
      leave: length('left on each foiled side by the taper sled, for the foil', 0, 5, 'more is no taper').optional(),
      pass: length('taken off in one pass of the surface sander, at most', 0.02, 3, 'sanders take that').optional(),
      tab: z
        .strictObject({
          depth: length('how far it stands out beyond the base', 5, 150, 'more is waste'),
          temporary: z
            .boolean()
            .meta({ description: 'true where it is only to hold the fin by, and is cut off before it is set' })
            .optional(),
        })
        .meta({ description: 'a tab beyond the base, set into the board or to hold the fin by' })
        .optional(),
      fillet: z
        .strictObject({
          radius: length('its radius', 2, 60, 'rounds between fin and board lie in that range'),
          of: z.enum(['rope', 'resin']).meta({ description: 'of a rope of wetted fibre, or of thickened resin' }),
          cloth: z
            .array(q.areal('a layer over it', CLOTH_BOUNDS))
            .max(12, 'more than 12 layers|at most 12')
            .meta({ description: 'the layers of cloth over it, each from the fin onto the board, on either side' })
            .optional(),
          reach: length(
            'how far the first layer reaches beyond it, up the fin and onto the board',
            0,
            200,
            'more is waste',
          ).optional(),
        })
        .meta({ description: 'the round between fin and board, and the cloth over it' })
        .optional(),
      stands: z
        .strictObject({
          right: away('the middle of its base from the centreline, to the right'),
          left: away('the same, to the left'),
          both: away('the same, one on each side: two fins are built'),
          cant: degrees('how far it leans outward from square to the bottom', 45, 'no fin leans further'),
          toe: degrees('how far its front end is turned toward the centreline', 15, 'no fin is turned further'),
        })
        .meta({ description: 'where it stands across the board and how; on the centreline, square, unless given' })
        .optional(),
    })
    .meta({ description: 'how it is made, where you make it: its papers are printed then' });
}

export type FinBuildFile = z.infer<ReturnType<typeof finBuildSchema>>;

const SIDES = ['right', 'left', 'both'] as const;

/**
 * A fin with its build.
 *
 * @param tip as the fin gives it; half of the base, or as it is drawn, where it does not
 */
export function toBuiltFin(
  file: FinBuildFile,
  fin: FinSpec,
  tip: number | undefined,
  board: BoardSpec,
  material: FindMaterial,
  units: Units,
  say: Say,
): FinSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const { section = 'symmetric', panel, wood = [], tab, fillet } = file;
  if (!panel && wood.length === 0) say.error([], 'it is built of nothing', 'a panel:, or layers of wood:, or both');
  if (fin.tipThickness > fin.thickness) {
    say.error(
      [],
      `it is thicker at its tip, ${printLength(fin.tipThickness, units)}, than at its base: no taper sled makes that`,
      `a tipThick of at most ${printLength(fin.thickness, units)}`,
    );
  }
  const outlined = toFinOutline(file.outline, fin, tip, units, say.at('outline'));
  const build: FinBuildSpec = {
    outline: outlined.outline,
    section,
    ...(panel && { panel: toPanel(panel, units, say.at('panel')) }),
    wood: wood.map((layer, i) => ({
      material: material(layer.wood, ['wood'], say.at('wood', i)),
      thickness: layer.thickness,
    })),
    ...(file.blankThick !== undefined && { blankThickness: file.blankThick }),
    over: file.over ?? usual('over'),
    leave: file.leave ?? usual('leave'),
    pass: file.pass ?? usual('pass'),
    ...(tab && { tab: { depth: tab.depth, isTemporary: tab.temporary ?? false } }),
    ...(fillet && {
      fillet: {
        radius: fillet.radius,
        of: fillet.of,
        cloth: fillet.cloth ?? [],
        reach: fillet.reach ?? usual('reach'),
      },
    }),
    stands: toStands(file.stands, fin, board, units, say.at('stands')),
  };
  return { ...fin, tip: outlined.tip, build };
}

/** More of the volume cannot be fibre: round fibres packed as close as they lie take 91 %, woven ones far less. */
const MOST_FIBRE = 0.75;

function toPanel(file: NonNullable<FinBuildFile['panel']>, units: Units, say: Say): PanelSpec {
  const { cloth, layers, thick, cured } = file;
  const densities = {
    fibreDensity: file.fibreDensity ?? GLASS_AND_EPOXY.fibreDensity,
    resinDensity: file.resinDensity ?? GLASS_AND_EPOXY.resinDensity,
  };
  if (layers !== undefined && thick !== undefined)
    say.error(['thick'], 'both layers and a thickness are given', 'keep one of them');
  if (layers === undefined && thick === undefined)
    say.error([], 'it has no thickness', 'layers:, or thick: and the layers follow');
  if (cured === undefined)
    return {
      cloth,
      fibre: file.fibre ?? HAND_FIBRE,
      ...(layers !== undefined && { layers }),
      ...(thick !== undefined && { thickness: thick }),
      ...densities,
    };
  if (layers === undefined)
    say.error(['cured'], 'it has come out, but nobody knows of how many layers', 'layers: instead of thick:');
  if (file.fibre !== undefined)
    say.error(['fibre'], 'its share of fibre follows from how thick it came out', 'leave it out');
  const dry = ((layers ?? NaN) * cloth) / densities.fibreDensity;
  if (dry > MOST_FIBRE * cured) {
    say.error(
      ['cured'],
      `so many layers of dry cloth alone are ${printLength(dry / MOST_FIBRE, units)} thick`,
      'measure again, or other layers',
    );
  }
  return { cloth, fibre: dry / cured, ...(layers !== undefined && { layers }), ...densities };
}

function toStands(
  file: FinBuildFile['stands'] = {},
  fin: FinSpec,
  board: BoardSpec,
  units: Units,
  say: Say,
): FinStandSpec {
  const given = SIDES.filter((side) => file[side] !== undefined);
  if (given.length > 1) say.error([given[1]!], `its side is given as ${given.join(' and as ')}`, 'keep one of them');
  const side = given[0];
  const away = side === undefined ? 0 : file[side]!;
  const half = halfWidthAt(side === 'left' ? (board.left ?? board.right) : board.right, board.length, fin.x);
  if (away + fin.thickness / 2 > half) {
    say.error(
      side === undefined ? [] : [side],
      `it stands outside the rail, which is ${printLength(half, units)} from the centreline there`,
      `at most ${printLength(Math.max(0, half - fin.thickness / 2), units)}`,
    );
  }
  if (side === 'both' && away < fin.thickness / 2)
    say.error(['both'], 'the two fins stand in each other', `at least ${printLength(fin.thickness / 2, units)}`);
  if (away === 0 && (file.cant || file.toe)) {
    say.error(
      [file.cant ? 'cant' : 'toe'],
      'a fin on the centreline has no outside to lean or turn to',
      'right:, left: or both: and how far it stands from the centreline, or leave it out',
    );
  }
  const radians = (degrees = 0) => (degrees * Math.PI) / 180;
  return { side: away === 0 ? 'centre' : (side ?? 'centre'), away, cant: radians(file.cant), toe: radians(file.toe) };
}

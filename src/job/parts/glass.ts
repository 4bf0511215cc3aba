import { z } from 'zod';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { GlassSpec, LaminatingSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import { USUAL_GLASS, USUAL_LAMINATING } from '../usual-glass.js';

/** Weights of cloth as they are sold, g/m². */
export const CLOTH_BOUNDS = { least: 20, most: 1200, because: 'cloth is sold in that range' };

export function glassSchema(q: Quantities) {
  const layers = (what: string) => z.array(q.areal('a layer of cloth', CLOTH_BOUNDS)).meta({ description: what });
  const minutes = (what: string, least: number, most: number) =>
    z
      .number()
      .min(least, `nobody works that fast|from ${least} to ${most} minutes`)
      .max(most, `nobody works that slowly|from ${least} to ${most} minutes`)
      .meta({ description: `minutes ${what}` })
      .optional();
  const coat = (what: string) => q.areal(what, { least: 0, most: 1500, because: 'more runs off the board' }).optional();
  return z
    .strictObject({
      deck: layers('the layers of cloth on the deck, innermost first, by weight').optional(),
      bottom: layers('the layers on the bottom').optional(),
      lap: q
        .length('how far each layer is drawn around the widest line of the rail onto the other side', {
          least: 0,
          most: 200,
          because: 'a lap lies on the rail',
        })
        .optional(),
      resin: q
        .share(
          'weight of the resin that stays in the cloth, as a share of the weight of the cloth; 100 % unless given',
          {
            least: 0.4,
            most: 3,
            because: 'less than 30 % leaves the cloth dry, more than 300 % is too much resin',
          },
        )
        .optional(),
      sealer: coat('resin of the coat that seals the bare board, by area'),
      hotCoat: coat('resin of the hot coat, by area, without what the cloth in it drinks'),
      hotCoatCloth: q.areal('the cloth that reinforces the hot coat, where there is one', CLOTH_BOUNDS).optional(),
      first: z
        .enum(['deck', 'bottom'])
        .meta({ description: 'which side is laminated first; the bottom unless this says otherwise' })
        .optional(),
      clothWidth: q
        .length('width of the cloth on its roll', { least: 100, most: 3000, because: 'rolls are made in that range' })
        .optional(),
      potLife: minutes('from mixing a batch of resin to the last of it spread, by its own sheet', 2, 240),
      minutesPerLayer: minutes('to wet out and squeegee one layer of one side', 1, 600),
      loss: q
        .share('resin that stays in the pot and on the tools, as a share of what is meant; 15 % unless given', {
          least: 0,
          most: 2,
          because: 'more is thrown away than used',
        })
        .optional(),
    })
    .meta({ description: 'what goes over the bare board: cloth and resin, and how it is laid on' });
}

export type GlassFile = z.infer<ReturnType<typeof glassSchema>>;

export function toGlass(file: GlassFile, units: Units): GlassSpec {
  return {
    deck: file.deck ?? USUAL_GLASS.deck,
    bottom: file.bottom ?? USUAL_GLASS.bottom,
    lap: file.lap ?? (units === 'in' ? 2 * MM_PER_INCH : USUAL_GLASS.lap),
    resin: file.resin ?? USUAL_GLASS.resin,
    sealer: file.sealer ?? USUAL_GLASS.sealer,
    hotCoat: file.hotCoat ?? USUAL_GLASS.hotCoat,
    hotCoatCloth: file.hotCoatCloth ?? USUAL_GLASS.hotCoatCloth,
  };
}

export function toLaminating(file: GlassFile): LaminatingSpec {
  const { first, clothWidth, potLife, minutesPerLayer, loss } = file;
  return {
    first: first ?? USUAL_LAMINATING.first,
    clothWidth: clothWidth ?? USUAL_LAMINATING.clothWidth,
    potLife: potLife ?? USUAL_LAMINATING.potLife,
    ...(minutesPerLayer !== undefined && { minutesPerLayer }),
    loss: loss ?? USUAL_LAMINATING.loss,
  };
}

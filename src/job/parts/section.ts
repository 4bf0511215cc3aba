import type { NumberedSection } from '../spec/board.js';
import { z } from 'zod';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';

/** A section by a few numbers that can be measured with a square and a rule. */
export function sectionSchema(q: Quantities) {
  const fullness = {
    least: 0.5,
    most: 0.98,
    because: 'half is a straight chamfer, 71 % an ellipse, and a full box cannot be shaped',
  };
  const contour = (what: string) =>
    q.length(what, { least: 0, most: 100, because: 'a deeper bottom than that leaves no board' }).optional();
  return z
    .strictObject({
      apex: q.share(
        'height of the widest point of the rail over the bottom, as a share of the thickness at the centre',
        {
          least: 0,
          most: 0.95,
          because: 'the rail turns between the bottom and the deck',
        },
      ),
      above: q.share(
        'fullness of the rail above its widest point: 50 % a chamfer, 71 % an ellipse, towards 100 % a box',
        fullness,
      ),
      below: q.share('fullness of the rail below its widest point, the same way', fullness),
      crown: q.length('how far the deck falls from the centre to the rail line, by a straightedge on the deck', {
        least: 0,
        most: 150,
        because: 'the crown is part of the thickness',
      }),
      roll: contour('how far a round bottom rises from the centre to the rail line'),
      concave: contour('how deep a hollow bottom is at the centre, under a straightedge'),
      vee: contour('how far a vee bottom rises from the centre to the rail line'),
      bevel: q
        .length(
          'width of the flat bevel between a hard edge in the bottom and the widest point; leave out for a soft rail',
          {
            least: 0.5,
            most: 100,
            because: 'narrower cannot be measured, wider is no bevel',
          },
        )
        .optional(),
    })
    .meta({
      description: 'the shape across the board at this station; stations without one lie between those with one',
    });
}

export type SectionFile = z.infer<ReturnType<typeof sectionSchema>>;

const CONTOURS = ['roll', 'concave', 'vee'] as const;

export function toSection(file: SectionFile, say: Say): NumberedSection {
  const given = CONTOURS.filter((kind) => file[kind] !== undefined);
  if (given.length > 1) {
    say.error([given[1]!], `the bottom is given as ${given.join(' and as ')}`, 'keep one of them');
  }
  const kind = given[0];
  const depth = kind === undefined ? 0 : file[kind]!;
  return {
    kind: 'numbers',
    apex: file.apex,
    above: file.above,
    below: file.below,
    crown: file.crown,
    bottom: kind === undefined || depth === 0 ? { kind: 'flat' } : { kind, depth },
    ...(file.bevel === undefined ? {} : { bevel: file.bevel }),
  };
}

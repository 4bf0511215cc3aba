import type { BuiltFin } from './finOf.js';

/** A fin as published figures: fin frame, mm, mm², kg; where it stands in the board's frame, radians. */
export function publishedFin(fin: BuiltFin) {
  const { spec, outline, area, centre, blank, panel, layers, sled, tapered, sections, base, standing } = fin;
  const { cant, toe } = spec.build!.stands;
  return {
    name: spec.name,
    outline,
    area,
    centre,
    blank,
    panel: panel ?? null,
    layers,
    sled,
    tapered,
    sections,
    base: base ?? null,
    standing,
    cant,
    toe,
    weight: fin.weight,
    fitted: fin.fitted,
  };
}

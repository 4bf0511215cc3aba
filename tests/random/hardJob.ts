/**
 * Jobs of another kind than `jobFile.ts` draws: every board is a table of offsets of its own, with superelliptic
 * sections that change from nose to tail, hard edges, rocker kicked up at the ends, rails from knife to box; flared and
 * crooked glue-ups, odd grids, coarse cutters, keep-outs of all kinds near the rails, dots as they landed, measures
 * after shaping, routing from two faces, shared guides; in millimetres and in inches. Invented.
 */
export interface HardJob {
  readonly file: Record<string, unknown>;
  /** The table of offsets beside it, CSV. */
  readonly table: string;
}

export const TABLE = 'hard.csv';

/** @param random numbers from 0 up to 1 */
export function hardJob(random: () => number): HardJob {
  const between = (low: number, high: number) => low + (high - low) * random();
  const often = (share: number) => random() < share;
  const oneOf = <T>(...things: readonly T[]): T => things[Math.floor(random() * things.length)]!;
  const inches = often(0.4);
  /** A measure as a builder of that shop would write it. */
  const written = (mm: number) =>
    inches ? `${(Math.round((mm / 25.4) * 32) / 32).toFixed(5)} in` : Math.round(mm * 10) / 10;
  const tabled = (mm: number) => (inches ? (mm / 25.4).toFixed(4) : mm.toFixed(1));

  const length = between(1000, 6400);
  const half = length * between(0.07, 0.2);
  const thick = Math.min(185, Math.max(34, half * between(0.16, 0.7)));
  const [widest, deepest] = [between(0.3, 0.7), between(0.35, 0.65)];
  const [noseFull, tailFull] = [between(1.6, 4.5), between(1.6, 4.5)];
  const squareTail = often(0.45);
  const tailHalf = squareTail ? half * between(0.25, 0.9) : 0;
  const [noseKick, tailKick] = [length * between(0, 0.09), length * between(0, 0.05)];
  const [kickFrom, kickTo] = [between(0.08, 0.4), between(0.7, 0.95)];
  const foil = between(1.8, 6);
  const halfAt = (share: number) => {
    const [end, off, full] =
      share < widest ? [0, (widest - share) / widest, noseFull] : [tailHalf, (share - widest) / (1 - widest), tailFull];
    return end + (half - end) * Math.max(0, 1 - off ** full) ** (share < widest ? 1 / Math.min(full, 2.2) : 1);
  };
  const bottomAt = (share: number) =>
    (share < kickFrom ? noseKick * ((kickFrom - share) / kickFrom) ** 2 : 0) +
    (share > kickTo ? tailKick * ((share - kickTo) / (1 - kickTo)) ** 2 : 0);
  const thickAt = (share: number) => {
    const off = share < deepest ? (deepest - share) / deepest : (share - deepest) / (1 - deepest);
    return Math.max(7, thick * (1 - 0.9 * off ** foil));
  };
  const [apexNose, apexTail] = [between(0.2, 0.65), between(0.12, 0.65)];
  const [deckFull, bottomFull, hull] = [between(1.7, 5), between(1.8, 7), between(-0.06, 0.06)];
  const edgeFrom = often(0.5) ? between(0.45, 0.8) : 2;

  const stations = 9 + Math.floor(random() * 8);
  const shares = Array.from({ length: stations }, (_, i) => 0.045 + (0.91 * i) / (stations - 1));
  const lines = ['station,y,z,edge'];
  for (const share of shares) {
    const [x, wide, tall, low] = [length * share, halfAt(share), thickAt(share), bottomAt(share)];
    const apex = apexNose + (apexTail - apexNose) * share;
    const isHard = share >= edgeFrom;
    const bevel = isHard ? 0.04 + 0.06 * (share - edgeFrom) : 0;
    const rim = wide * (1 - bevel);
    const count = 7;
    for (let i = 0; i <= count; i++) {
      const y = rim * Math.sin((Math.PI / 2) * (i / count));
      const up = isHard
        ? hull * tall * (y / rim) ** 2
        : apex * tall * (1 - Math.max(0, 1 - (y / rim) ** bottomFull) ** (1 / bottomFull));
      const z = low + Math.max(isHard ? hull * tall : 0, up);
      if (!isHard && i === count) break;
      lines.push([tabled(x), tabled(y), tabled(z), isHard && i === count ? 'edge' : ''].join());
    }
    for (let i = 0; i <= count; i++) {
      const y = wide * Math.cos((Math.PI / 2) * (i / count));
      const z = low + apex * tall + (1 - apex) * tall * Math.max(0, 1 - (y / wide) ** deckFull) ** (1 / deckFull);
      lines.push([tabled(x), tabled(i === count ? 0 : y), tabled(z), ''].join());
    }
  }

  const material = (wood: boolean) =>
    wood ? { stringer: oneOf('redwood', 'basswood') } : { strip: oneOf('eps-15', 'pu-blank') };
  const count = 1 + Math.floor(random() * 5);
  const each = (half * between(0.55, 0.9)) / count;
  const member = (i: number, centre: boolean) => {
    const wood = often(0.3);
    const wide = wood ? between(4, Math.min(28, each)) : each * between(0.5, 1.2);
    const flare = between(0.45, 1.9);
    return {
      ...material(wood),
      thickness: often(0.5) && !wood ? { nose: written(wide), tail: written(wide * flare) } : written(wide),
      ...(wood && { router: oneOf('open', 'solid') }),
      ...(i > 0 || centre ? { joint: oneOf('dotted', 'dotted', 'bonded') } : {}),
    };
  };
  const hasCentre = often(0.4);
  const members = [
    ...Array.from({ length: count }, (_, i) => member(i, hasCentre)),
    { strip: 'eps-15', joint: oneOf('dotted', 'bonded') },
  ];
  const keepOut = (name: string) => ({
    name,
    ...(often(0.5) ? { at: written(length * between(0.15, 0.8)) } : { fromTail: written(length * between(0.08, 0.5)) }),
    ...(often(0.5) ? { [oneOf('left', 'right', 'both')]: written(half * between(0.05, 0.85)) } : {}),
    ...(often(0.5)
      ? { disc: written(between(15, 80)) }
      : { rectangle: { length: written(between(20, length * 0.12)), width: written(between(8, half * 0.4)) } }),
    ...(often(0.3) ? { [oneOf('fromDeck', 'fromBottom')]: written(thick * between(0.1, 0.6)) } : {}),
  });
  const jointKeepOut = (name: string) => {
    const [x, joint] = [between(0.15, 0.85), oneOf('JR', 'JL')];
    const reach = () => between(5, thick * 0.4);
    const corner = (a: number, b: number) => [written(a * reach()), written(b * reach())];
    return {
      name,
      at: written(length * x),
      joint: hasCentre || count > 1 ? `${joint}${1 + Math.floor(random() * count)}` : 'JC',
      up: written(bottomAt(x) + thickAt(x) * between(0.1, 0.9)),
      ...(often(0.5)
        ? { polygon: [corner(-1, -1), corner(1, -0.4), corner(0.7, 1), corner(-0.6, 0.8)] }
        : { disc: written(between(10, thick)) }),
    };
  };
  const skin = between(0.05, 0.3);
  const cutter = oneOf(3, 6, 8, 12.7, 19, 30);
  return {
    table: `${lines.join('\n')}\n`,
    file: {
      job: 'hard',
      units: inches ? 'in' : 'mm',
      board: {
        length: written(length),
        nose: oneOf('round', 'pointed'),
        tail: squareTail
          ? oneOf(
              { square: written(tailHalf) },
              { squash: written(tailHalf), corner: written(tailHalf * between(0.1, 0.5)) },
              { swallow: written(tailHalf), depth: written(Math.min(500, length * between(0.01, 0.06))) },
            )
          : oneOf('pin', 'round'),
        offsets: TABLE,
        stations: [
          { at: 0, bottom: written(bottomAt(0)), thick: written(Math.max(5, thickAt(0) * 0.7)) },
          { fromTail: 0, bottom: written(bottomAt(1)), thick: written(Math.max(5, thickAt(1) * 0.8)) },
        ],
      },
      glueUp: {
        ...(hasCentre
          ? { centre: { stringer: 'basswood', thickness: written(between(4, 20)), router: oneOf('open', 'solid') } }
          : { centreJoint: oneOf('dotted', 'bonded') }),
        members,
        ...(often(0.15) && { left: [...members.slice(0, -1).map((_, i) => member(i, hasCentre)), members.at(-1)] }),
      },
      chambers: {
        pitch: written(
          oneOf(...[0.05, 0.1, 0.15, 0.2].map((share) => Math.max(60, length * share)), between(70, 110), 1900),
        ),
        datum: written(length * between(0, 0.2)),
        stagger: oneOf(0, 0.25, 0.5, 0.7),
        web: written(between(8, 40)),
        deckSkin: written(Math.max(4, thick * skin)),
        bottomSkin: written(Math.max(4, thick * skin * between(0.6, 1.4))),
        railWall: written(Math.max(6, thick * skin * between(0.6, 4))),
        floor: written(between(3, 12)),
        tolerance: written(between(0, 2)),
        shape: oneOf('follow', 'straight', 'square'),
        cutter: written(cutter),
        smallest: {
          length: written(cutter + between(8, 60)),
          height: written(cutter + between(2, 15)),
          depth: written(between(8, 40)),
        },
        solidNose: written(length * between(0.01, 0.15)),
        solidTail: written(length * between(0.01, 0.15)),
      },
      keepOuts: [
        ...Array.from({ length: Math.floor(random() * 5) }, (_, i) => keepOut(`thing ${i + 1}`)),
        ...Array.from({ length: Math.floor(random() * 3) }, (_, i) => jointKeepOut(`hole ${i + 1}`)),
      ],
      dots: {
        size: written(between(12, 40)),
        margin: written(between(3, 12)),
        clearance: written(between(1, 10)),
        spacing: written(between(200, 900)),
        nearEnd: written(between(120, 500)),
        may: oneOf(['trim', 'split'], ['trim', 'split', 'swallow'], ['trim']),
      },
      routing: {
        cutterLength: written(between(40, 300)),
        ...(often(0.25) && { guides: oneOf<unknown>({ count: 2 + Math.floor(random() * 4) }, '12 %') }),
      },
      fill: { foam: 'eps-12' },
    },
  };
}

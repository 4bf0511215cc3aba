import fc from 'fast-check';

/**
 * Job files drawn at random, as a builder might write them, in plain millimetres: boards of 1.2 to 6 m with all noses,
 * tails, bottoms and rails, glue-ups parallel and flared, the same on both sides or not. Invented; some ask for the
 * impossible, which the reader then says.
 */
export const jobFiles: fc.Arbitrary<Record<string, unknown>> = fc
  .record({
    length: fc.integer({ min: 1200, max: 6000 }),
    slender: fc.double({ min: 0.09, max: 0.26, noNaN: true }),
    deep: fc.double({ min: 0.1, max: 0.28, noNaN: true }),
    fullness: fc.double({ min: 1.7, max: 3.2, noNaN: true }),
    wide: fc.double({ min: 0.42, max: 0.58, noNaN: true }),
    noseRocker: fc.double({ min: 0, max: 0.05, noNaN: true }),
    tailRocker: fc.double({ min: 0, max: 0.03, noNaN: true }),
    nose: fc.constantFrom('round', 'pointed', 'square'),
    tail: fc.constantFrom('pin', 'round', 'square', 'squash', 'swallow'),
    tailHalf: fc.double({ min: 0.25, max: 0.7, noNaN: true }),
    lopsided: fc.option(fc.double({ min: 0.9, max: 1.1, noNaN: true }), { freq: 3 }),
    sections: fc.array(
      fc.record({
        apex: fc.double({ min: 0.15, max: 0.7, noNaN: true }),
        above: fc.double({ min: 0.7, max: 0.93, noNaN: true }),
        below: fc.double({ min: 0.68, max: 0.95, noNaN: true }),
        crown: fc.double({ min: 0, max: 0.12, noNaN: true }),
        bottom: fc.constantFrom('flat', 'concave', 'roll', 'vee'),
        contour: fc.double({ min: 0.01, max: 0.09, noNaN: true }),
        bevel: fc.option(fc.double({ min: 0.04, max: 0.2, noNaN: true }), { freq: 2 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    members: fc.array(
      fc.record({
        wood: fc.boolean(),
        thick: fc.double({ min: 0.3, max: 1, noNaN: true }),
        taper: fc.option(fc.double({ min: 0.6, max: 1.5, noNaN: true }), { freq: 2 }),
        solid: fc.boolean(),
        dotted: fc.boolean(),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    centre: fc.boolean(),
    pitch: fc.double({ min: 0.07, max: 0.2, noNaN: true }),
    skin: fc.double({ min: 0.06, max: 0.2, noNaN: true }),
    shape: fc.constantFrom('follow', 'straight', 'square'),
    stagger: fc.constantFrom(0, 0.5, 0.33),
    fin: fc.boolean(),
  })
  .map((d) => {
    const round = (mm: number) => Math.round(mm * 10) / 10;
    const half = (d.length * d.slender) / 2;
    const thick = Math.min(190, 2 * half * d.deep);
    const widest = d.length * d.wide;
    const tailHalf = half * d.tailHalf;
    const noseHalf = d.nose === 'square' ? half * 0.35 : 0;
    const endHalf = d.tail === 'pin' || d.tail === 'round' ? 0 : tailHalf;
    const plan = (x: number) => {
      const [end, share] =
        x < widest ? [noseHalf, (widest - x) / widest] : [endHalf, (x - widest) / (d.length - widest)];
      return end + (half - end) * (1 - share ** d.fullness);
    };
    const outline = Array.from({ length: 14 }, (_, i) => (d.length * (1 - Math.cos((Math.PI * (i + 1)) / 15))) / 2).map(
      (x) => [round(x), round(plan(x))],
    );
    const stations = Array.from({ length: 11 }, (_, i) => i / 10).map((share) => {
      const off = (share - 0.5) * 2;
      const rocker = off < 0 ? d.noseRocker * (-off) ** 2.4 : d.tailRocker * off ** 2.4;
      return {
        at: round(d.length * share),
        bottom: round(d.length * rocker),
        thick: round(Math.max(4, thick * (1 - 0.92 * Math.abs(off) ** 2.6))),
      };
    });
    const low = Math.min(...stations.map((s) => s.bottom));
    d.sections.forEach((s, i) => {
      const share = d.sections.length === 1 ? 0.5 : 0.1 + (0.8 * i) / (d.sections.length - 1);
      const station = stations[Math.round(share * 10)]!;
      Object.assign(station, {
        section: {
          apex: `${Math.round(s.apex * 100)} %`,
          above: `${Math.round(s.above * 100)} %`,
          below: `${Math.round(s.below * 100)} %`,
          crown: round(s.crown * station.thick),
          ...(s.bottom !== 'flat' && { [s.bottom]: round(s.contour * station.thick) }),
          ...(s.bevel !== null && i > 0 && { bevel: round(s.bevel * half) }),
        },
      });
    });
    const material = (wood: boolean) => (wood ? { stringer: 'basswood' } : { strip: 'eps-15' });
    const across = (half * 0.8) / (d.members.length + 1);
    const members = [
      ...d.members.map((m, i) => ({
        ...material(m.wood),
        thickness:
          m.taper !== null && !m.wood
            ? { nose: round(across * m.thick), tail: round(across * m.thick * m.taper) }
            : round(m.wood ? Math.min(25, across * m.thick) : across * m.thick),
        router: m.solid && m.wood ? 'solid' : 'open',
        ...(i > 0 || d.centre ? { joint: m.dotted ? 'dotted' : 'bonded' } : {}),
      })),
      { strip: 'eps-15', joint: 'dotted' },
    ];
    const tails: Record<string, unknown> = {
      pin: 'pin',
      round: 'round',
      square: { square: round(tailHalf) },
      squash: { squash: round(tailHalf), corner: round(tailHalf * 0.3) },
      swallow: { swallow: round(tailHalf), depth: round(d.length * 0.04) },
    };
    return {
      job: 'random',
      units: 'mm',
      board: {
        length: d.length,
        nose: d.nose === 'square' ? { square: round(noseHalf) } : d.nose,
        tail: tails[d.tail],
        outline,
        ...(d.lopsided !== null &&
          d.tail !== 'swallow' && {
            left: {
              nose: d.nose === 'square' ? { square: round(noseHalf) } : d.nose,
              tail: tails[d.tail],
              outline: outline.map(([x, y]) => [x, round(y! * d.lopsided!)]),
            },
          }),
        stations: stations.map((s) => ({ ...s, bottom: round(s.bottom - low) })),
      },
      glueUp: {
        ...(d.centre
          ? { centre: { stringer: 'basswood', thickness: 8, router: 'open' } }
          : { centreJoint: d.members[0]!.dotted ? 'dotted' : 'bonded' }),
        members,
      },
      chambers: {
        pitch: round(d.length * d.pitch),
        datum: round(d.length * 0.05),
        stagger: d.stagger,
        web: Math.max(8, round(thick * 0.2)),
        deckSkin: round(Math.max(4, thick * d.skin)),
        bottomSkin: round(Math.max(4, thick * d.skin * 0.9)),
        railWall: round(Math.max(6, thick * d.skin * 1.5)),
        floor: 4,
        tolerance: 0.5,
        shape: d.shape,
        cutter: 8,
        smallest: { length: 30, height: 12, depth: 12 },
        solidNose: round(d.length * 0.04),
        solidTail: round(d.length * 0.04),
      },
      ...(d.fin && {
        keepOuts: [
          {
            name: 'fin root',
            fromTail: round(d.length * 0.12),
            rectangle: { length: round(d.length * 0.06), width: 30 },
          },
        ],
      }),
      // So long that walls and not the cutter end every chamber.
      routing: { cutterLength: 400 },
      fill: { foam: 'eps-12' },
    };
  });

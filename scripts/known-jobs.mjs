/**
 * A job of which it is known that so many sheets suffice: they are cut at random in three stages (strips, lengths,
 * blocks), with a saw cut between any two pieces, and what comes off is shuffled. Half of the pieces that are cut up
 * are cut to their very end, the others leave a rest; jobs in which more than a tenth is waste are drawn again.
 * 1 mm is the smallest step of a size.
 * @param draw a stream of numbers in 0..1
 * @param few whether they come in two to four lengths, as from one family of guides, or in lengths of any kind
 * @param most sheets
 */
export function knownJob(draw, few, most = 6) {
  const whole = (from, to) => from + Math.floor(draw() * (to - from + 1));
  const pick = (list) => list[whole(0, list.length - 1)];
  for (;;) {
    const [length, width] = pick([
      [2400, 600],
      [1200, 600],
      [1000, 500],
      [1200, 1200],
    ]);
    const saw = { kerf: pick([0, 1, 3, 4]), trim: pick([0, 5, 10]), keep: { length: 200, width: 60 } };
    const mayTurn = draw() < 0.5;
    const { kerf, trim } = saw;
    const family = few ? Array.from({ length: whole(2, 4) }, () => whole(120, 320)) : undefined;
    const cut = (room, from, to) => {
      const pieces = [];
      const toTheEnd = draw() < 0.5;
      for (let rest = room; rest >= from;) {
        const piece = whole(from, Math.min(to, rest));
        pieces.push(toTheEnd && rest - piece < from + kerf && rest <= to ? rest : piece);
        rest -= pieces.at(-1) + kerf;
      }
      return pieces;
    };
    const lengths = (room) => {
      if (!family) return cut(room, 100, 350);
      const pieces = [];
      for (let rest = room; ; rest -= pieces.at(-1) + kerf) {
        const fitting = family.filter((each) => each <= rest);
        if (fitting.length === 0) return pieces;
        pieces.push(pick(fitting));
      }
    };
    const sheets = whole(2, most);
    const parts = [];
    for (let n = 0; n < sheets; n++)
      for (const strip of cut(width - 2 * trim, 40, 240))
        for (const along of lengths(length - 2 * trim))
          for (const height of cut(strip, 30, 180)) parts.push({ foam: 'fill', length: along, height, mayTurn });
    const area = parts.reduce((sum, part) => sum + (part.length + kerf) * (part.height + kerf), 0);
    const fill = area / (sheets * (length - 2 * trim + kerf) * (width - 2 * trim + kerf));
    if (fill <= 0.9) continue;
    const shuffled = parts.map((part) => ({ part, at: draw() })).sort((a, b) => a.at - b.at);
    const numbered = shuffled.map(({ part }, i) => ({ id: `B${i}`, ...part }));
    return { parts: numbered, sheet: { id: 'sheet', foam: 'fill', length, width }, saw, sheets, fill };
  }
}

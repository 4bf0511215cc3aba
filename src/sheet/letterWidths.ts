/** Height of capitals in the embedded font, in its units (DejaVu Sans, 2048 units in an em). */
const CAPITALS = 1493;

/**
 * Widths of the signs from the space to the tilde (Unicode 32 to 126) in the embedded font, in its units: its table
 * `hmtx`.
 */
// prettier-ignore
const ASCII = [
  651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690,
  1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087,
  2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604, 604, 1343, 1141, 1767, 1532, 1612,
  1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799, 690, 799, 1716, 1024,
  1024, 1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995, 1298, 1253,
  1300, 1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716,
] as const;

const OTHERS: Readonly<Record<string, number>> = { '·': 651, '×': 1716, '–': 1024, '—': 2048, '°': 1024 };
/** A sign that is not in the list takes as much as the widest of it. */
const WIDEST = 2048;

/** How wide a sign is, as a share of the height of capitals. */
export function letterWidth(sign: string): number {
  return (ASCII[sign.charCodeAt(0) - 32] ?? OTHERS[sign] ?? WIDEST) / CAPITALS;
}

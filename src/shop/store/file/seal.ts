/**
 * A check sum over the fields of one row, kept with it: what is read back from a damaged file is shown only where it
 * still agrees. CRC-32 (ISO/IEC 13239; polynomial 0x04C11DB7 reflected) over the letters of the fields.
 */
export function sealOf(fields: readonly (string | number)[]): number {
  const text = fields.join(BETWEEN);
  let crc = -1;
  for (let i = 0; i < text.length; i++) {
    const letter = text.charCodeAt(i);
    crc = TABLE[(crc ^ letter) & 0xff]! ^ (crc >>> 8);
    if (letter > 0x7f) crc = TABLE[(crc ^ (letter >>> 8)) & 0xff]! ^ (crc >>> 8);
  }
  return (crc ^ -1) >>> 0;
}

/** Unit separator (ECMA-48): no field that is let in holds one. */
const BETWEEN = '\u001f';

const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

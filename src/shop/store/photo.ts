import { createHash } from 'node:crypto';

export interface Photo {
  readonly type: PhotoType;
  readonly bytes: Uint8Array;
}

export type PhotoType = 'image/jpeg' | 'image/png' | 'image/webp';

/** A photo is called by the SHA-256 of its bytes. */
export function photoName(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/**
 * What a file is by its first bytes, whatever it calls itself: JPEG (ITU-T T.81, B.1.1.3), PNG (ISO/IEC 15948, 5.2),
 * WebP (RFC 9649, 2.4).
 */
export function photoTypeOf(bytes: Uint8Array): PhotoType | undefined {
  const starts = (at: number, ...values: number[]) => values.every((value, i) => bytes[at + i] === value);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return 'image/webp';
  return undefined;
}

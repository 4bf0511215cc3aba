import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { Growing, Scanner } from './numbers.js';

/** Bytes before the triangles of a binary file, and of each of them. */
const HEAD = 84;
const EACH = 50;

/** How many triangles a binary file says it has; undefined where it is too short to say. */
function saidCount(bytes: Uint8Array): number | undefined {
  if (bytes.length < HEAD) return undefined;
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
}

/**
 * STL, text or binary; every triangle with points of its own. A binary file may begin with "solid" too: it is told by
 * its length. Normals are not read: they follow from the order of the points.
 *
 * Source: 3D Systems, "StereoLithography Interface Specification" (1989), as in M. Burns, "Automated Fabrication"
 * (1993), section 6.5; from memory.
 */
export function readStl(bytes: Uint8Array): Triangles | ScanFault {
  const said = saidCount(bytes);
  if (said !== undefined && bytes.length === HEAD + EACH * said) return fromBinary(bytes, said);
  const scanner = new Scanner(bytes);
  if (scanner.next() && scanner.is('solid') && looksLikeText(bytes)) return fromText(scanner);
  if (said === undefined) return { kind: 'notMesh' };
  const needs = HEAD + EACH * said;
  // A file that is nothing of the kind says any number there.
  if (looksLikeText(bytes) || said > MOST_SAID || bytes.length < needs / 1000) return { kind: 'notMesh' };
  if (bytes.length < needs) return { kind: 'truncated', has: bytes.length, needs, of: 'bytes' };
  return bytes.length - needs > needs ? { kind: 'notMesh' } : fromBinary(bytes, said);
}

/** More triangles than this, no file of a board has. */
const MOST_SAID = 50_000_000;

/** Whether the beginning of a file has no byte that text has not. */
function looksLikeText(bytes: Uint8Array): boolean {
  return bytes.subarray(0, 1000).every((byte) => byte >= 32 || (byte >= 9 && byte <= 13));
}

function fromBinary(bytes: Uint8Array, count: number): Triangles {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const positions = new Float64Array(9 * count);
  for (let t = 0, at = HEAD + 12, k = 0; t < count; t++, at += EACH)
    for (let i = 0; i < 36; i += 4) positions[k++] = view.getFloat32(at + i, true);
  return { positions, triangles: counted(3 * count) };
}

function fromText(scanner: Scanner): Triangles | ScanFault {
  const positions = new Growing((length) => new Float64Array(length));
  let hasEnd = false;
  scanner.skipLine();
  while (scanner.next()) {
    if (scanner.is('vertex')) {
      for (let axis = 0; axis < 3; axis++) {
        if (!scanner.next()) return { kind: 'truncated', has: scanner.line, needs: scanner.line + 1, of: 'lines' };
        const value = scanner.number();
        if (Number.isNaN(value) && !scanner.is('nan') && !scanner.is('-nan') && !/^[+-]?inf/i.test(scanner.text()))
          return { kind: 'badLine', line: scanner.line, text: scanner.text() };
        positions.push(value);
      }
    } else if (scanner.is('endsolid')) {
      hasEnd = true;
      scanner.skipLine();
    } else if (scanner.is('solid')) {
      hasEnd = false;
      scanner.skipLine();
    }
  }
  if (positions.length % 9 !== 0 || (!hasEnd && positions.length > 0))
    return { kind: 'truncated', has: scanner.line, needs: scanner.line + 1, of: 'lines' };
  return { positions: positions.all(), triangles: counted(positions.length / 3) };
}

function counted(length: number): Uint32Array {
  const numbers = new Uint32Array(length);
  for (let i = 0; i < length; i++) numbers[i] = i;
  return numbers;
}

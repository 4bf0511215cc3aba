import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { Growing, Scanner } from './numbers.js';

/**
 * Points and faces of an OBJ file; faces of more than three corners in a fan from their first. Everything else in it is
 * passed over.
 *
 * Source: Wavefront Technologies, "Advanced Visualizer Manual", appendix B (1995); from memory.
 */
export function readObj(bytes: Uint8Array): Triangles | ScanFault {
  const positions = new Growing((length) => new Float64Array(length));
  const triangles = new Growing((length) => new Uint32Array(length));
  const scanner = new Scanner(bytes);
  const corners: number[] = [];
  do {
    if (!scanner.nextOnLine()) continue;
    if (scanner.is('v')) {
      for (let axis = 0; axis < 3; axis++) {
        if (!scanner.nextOnLine()) return { kind: 'badLine', line: scanner.line, text: 'v' };
        const value = scanner.number();
        if (Number.isNaN(value) && !scanner.is('nan') && !/^[+-]?inf/i.test(scanner.text()))
          return { kind: 'badLine', line: scanner.line, text: scanner.text() };
        positions.push(value);
      }
    } else if (scanner.is('f')) {
      corners.length = 0;
      const known = positions.length / 3;
      const { line } = scanner;
      while (nextCorner(scanner)) {
        const [said] = scanner.text().split('/');
        const number = Number(said);
        const point = number < 0 ? known + number : number - 1;
        if (!Number.isInteger(number) || number === 0) return { kind: 'badLine', line, text: scanner.text() };
        if (point < 0) return { kind: 'noPoint', triangle: triangles.length / 3 + 1, point: number, points: known };
        corners.push(point);
      }
      if (corners.length < 3) return { kind: 'badLine', line, text: 'f' };
      for (let i = 2; i < corners.length; i++) {
        triangles.push(corners[0]!);
        triangles.push(corners[i - 1]!);
        triangles.push(corners[i]!);
      }
    }
  } while (scanner.skipLine());
  if (positions.length === 0) return { kind: 'notMesh' };
  if (triangles.length === 0) return { kind: 'cloud', points: positions.length / 3 };
  return { positions: positions.all(), triangles: triangles.all() };
}

/** The next corner of a face, on the next line too where this one ends with a stroke. */
function nextCorner(scanner: Scanner): boolean {
  while (scanner.nextOnLine()) {
    if (scanner.end - scanner.start === 1 && scanner.bytes[scanner.start] === STROKE) scanner.skipLine();
    else return true;
  }
  return false;
}

const STROKE = 92;

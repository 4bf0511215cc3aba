import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { Growing, Scanner } from './numbers.js';

interface Property {
  readonly name: string;
  readonly type: Type;
  /** Of a list, the type of its count. */
  readonly count?: Type;
}

interface Element {
  readonly name: string;
  readonly count: number;
  readonly properties: Property[];
}

interface Header {
  readonly format: string;
  readonly elements: readonly Element[];
  /** Where the data begins. */
  readonly from: number;
  readonly lines: number;
}

const TYPES = {
  char: 1,
  int8: 1,
  uchar: 1,
  uint8: 1,
  short: 2,
  int16: 2,
  ushort: 2,
  uint16: 2,
  int: 4,
  int32: 4,
  uint: 4,
  uint32: 4,
  float: 4,
  float32: 4,
  double: 8,
  float64: 8,
} as const;
type Type = keyof typeof TYPES;
const isType = (name: string | undefined): name is Type => name !== undefined && Object.hasOwn(TYPES, name);

/** Bytes at the beginning within which a header ends. */
const MOST_HEADER = 100_000;

/**
 * Points and faces of a PLY file, text or binary of either byte order; faces of more than three corners in a fan from
 * their first. Other elements and properties are passed over.
 *
 * Source: G. Turk, "The PLY Polygon File Format" (Stanford University, 1994); from memory.
 */
export function readPly(bytes: Uint8Array): Triangles | ScanFault {
  const header = headerOf(bytes);
  if ('kind' in header) return header;
  const faces = header.elements.find(({ name }) => name === 'face');
  const vertices = header.elements.find(({ name }) => name === 'vertex');
  if (!vertices || !['x', 'y', 'z'].every((axis) => vertices.properties.some(({ name }) => name === axis)))
    return { kind: 'notMesh' };
  if (!faces || faces.count === 0) return { kind: 'cloud', points: vertices.count };
  if (!faces.properties.some(isCorners)) return { kind: 'format', format: 'PLY' };
  const source = header.format === 'ascii' ? textSource(bytes, header) : binarySource(bytes, header);
  return read(header, source);
}

const isCorners = ({ name, count }: Property) =>
  count !== undefined && (name === 'vertex_indices' || name === 'vertex_index');

/** Values one after the other; `ended` once more were asked for than there are. */
interface Source {
  next(type: Type): number;
  fault(): ScanFault | undefined;
}

function read({ elements }: Header, source: Source): Triangles | ScanFault {
  const positions = new Growing((length) => new Float64Array(length));
  const triangles = new Growing((length) => new Uint32Array(length));
  const corners: number[] = [];
  for (const { name, count, properties } of elements) {
    const axes = properties.map((property) => (name === 'vertex' ? ['x', 'y', 'z'].indexOf(property.name) : -1));
    const point = [0, 0, 0];
    for (let i = 0; i < count; i++) {
      for (let p = 0; p < properties.length; p++) {
        const property = properties[p]!;
        if (property.count === undefined) {
          const value = source.next(property.type);
          if (axes[p]! >= 0) point[axes[p]!] = value;
          continue;
        }
        corners.length = 0;
        const length = source.next(property.count);
        for (let k = 0; k < length; k++) {
          corners.push(source.next(property.type));
          if (source.fault()) break;
        }
        if (name !== 'face' || !isCorners(property)) continue;
        for (let k = 2; k < corners.length; k++) {
          triangles.push(corners[0]!);
          triangles.push(corners[k - 1]!);
          triangles.push(corners[k]!);
        }
      }
      const fault = source.fault();
      if (fault) return fault;
      if (name === 'vertex') for (let axis = 0; axis < 3; axis++) positions.push(point[axis]!);
    }
  }
  return { positions: positions.all(), triangles: triangles.all() };
}

function headerOf(bytes: Uint8Array): Header | ScanFault {
  const text = new TextDecoder('latin1').decode(bytes.subarray(0, MOST_HEADER));
  const end = /^end_header[ \t]*\r?\n/m.exec(text);
  if (!end) return { kind: 'truncated', has: bytes.length, needs: bytes.length + 1, of: 'bytes' };
  const lines = text.slice(0, end.index).split(/\r?\n/);
  const elements: Element[] = [];
  let format = '';
  for (let i = 1; i < lines.length; i++) {
    const [word, first, second, third, fourth] = lines[i]!.trim().split(/\s+/);
    const bad: ScanFault = { kind: 'badLine', line: i + 1, text: lines[i]!.slice(0, 40) };
    if (word === 'format') format = first ?? '';
    else if (word === 'element') {
      const count = Number(second);
      if (!first || !Number.isInteger(count) || count < 0) return bad;
      elements.push({ name: first, count, properties: [] });
    } else if (word === 'property') {
      const element = elements.at(-1);
      if (!element) return bad;
      if (first === 'list') {
        if (!isType(second) || !isType(third) || !fourth) return bad;
        element.properties.push({ name: fourth, type: third, count: second });
      } else {
        if (!isType(first) || !second) return bad;
        element.properties.push({ name: second, type: first });
      }
    }
  }
  if (!['ascii', 'binary_little_endian', 'binary_big_endian'].includes(format))
    return { kind: 'format', format: `PLY ${format}` };
  return { format, elements, from: end.index + end[0].length, lines: lines.length };
}

function textSource(bytes: Uint8Array, { from, lines }: Header): Source {
  const scanner = new Scanner(bytes, from);
  scanner.line = lines + 1;
  let fault: ScanFault | undefined;
  return {
    next() {
      if (!scanner.next()) {
        fault ??= { kind: 'truncated', has: scanner.line, needs: scanner.line + 1, of: 'lines' };
        return NaN;
      }
      const value = scanner.number();
      if (Number.isNaN(value) && !scanner.is('nan') && !/^[+-]?(nan|inf)/i.test(scanner.text()))
        fault ??= { kind: 'badLine', line: scanner.line, text: scanner.text() };
      return value;
    },
    fault: () => fault,
  };
}

function binarySource(bytes: Uint8Array, { from, format, elements }: Header): Source {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const isLittle = format === 'binary_little_endian';
  const least = elements.reduce(
    (sum, { count, properties }) =>
      sum + count * properties.reduce((size, { type, count: list }) => size + TYPES[list ?? type], 0),
    from,
  );
  let at = from;
  let fault: ScanFault | undefined =
    bytes.length < least ? { kind: 'truncated', has: bytes.length, needs: least, of: 'bytes' } : undefined;
  return {
    next(type) {
      const here = at;
      at += TYPES[type];
      if (at > bytes.length) {
        fault ??= { kind: 'truncated', has: bytes.length, needs: at, of: 'bytes' };
        return NaN;
      }
      switch (type) {
        case 'char':
        case 'int8':
          return view.getInt8(here);
        case 'uchar':
        case 'uint8':
          return view.getUint8(here);
        case 'short':
        case 'int16':
          return view.getInt16(here, isLittle);
        case 'ushort':
        case 'uint16':
          return view.getUint16(here, isLittle);
        case 'int':
        case 'int32':
          return view.getInt32(here, isLittle);
        case 'uint':
        case 'uint32':
          return view.getUint32(here, isLittle);
        case 'float':
        case 'float32':
          return view.getFloat32(here, isLittle);
        case 'double':
        case 'float64':
          return view.getFloat64(here, isLittle);
      }
    },
    fault: () => fault,
  };
}

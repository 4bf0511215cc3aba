import type { Vertex } from '../../contour/vertex.js';
import type { Box } from '../trace/box.js';
import type { DxfLayer } from './dxfLayer.js';
import { dxfText } from './dxfText.js';

/** A group: a code and what it holds (DXF reference, "DXF format"). */
type Group = readonly [code: number, value: string | number];

export interface DxfWords {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Of capitals, mm. */
  readonly height: number;
  readonly align: 'left' | 'centre' | 'right';
  readonly angle: number;
}

/** Handles of the parts that every drawing has; entities are numbered after them. */
const HANDLE = { tables: 1, modelSpace: 0x20, paperSpace: 0x21, rootDictionary: 0x30, groups: 0x31, entities: 0x100 };

/**
 * A drawing file in the making: DXF of 2000 (AC1015, DXF reference for that release), ASCII. Polylines are LWPOLYLINEs,
 * arcs are bulges. The tables that other programs insist on are written with the least they take.
 */
export class DxfFile {
  private readonly entities: Group[] = [];
  private next = HANDLE.entities;
  private nextTable = HANDLE.tables;

  /** @param layers all layers that entities will lie on. */
  constructor(private readonly layers: readonly DxfLayer[]) {}

  polyline(layer: string, vertices: readonly Vertex[], closed: boolean): void {
    this.entity('LWPOLYLINE', layer, 'AcDbPolyline');
    this.entities.push([90, vertices.length], [70, closed ? 1 : 0], [43, real(0)]);
    for (const { x, y, bulge } of vertices) {
      this.entities.push([10, real(x)], [20, real(y)]);
      if (bulge) this.entities.push([42, real(bulge)]);
    }
  }

  circle(layer: string, x: number, y: number, radius: number): void {
    this.entity('CIRCLE', layer, 'AcDbCircle');
    this.entities.push([10, real(x)], [20, real(y)], [30, real(0)], [40, real(radius)]);
  }

  /** A line of text, its anchor at the middle of the capitals. */
  text(layer: string, { text, x, y, height, align, angle }: DxfWords): void {
    this.entity('TEXT', layer, 'AcDbText');
    this.entities.push([10, real(x)], [20, real(y)], [30, real(0)], [40, real(height)], [1, dxfText(text)]);
    this.entities.push([50, real(angle)], [72, { left: 0, centre: 1, right: 2 }[align]]);
    this.entities.push([11, real(x)], [21, real(y)], [31, real(0)], [100, 'AcDbText'], [73, 2]);
  }

  /** The whole file, lines ended by CRLF. */
  write(extent: Box): string {
    const tables = this.tables();
    const groups: Group[] = [
      ...section('HEADER', [
        ...variable('ACADVER', [1, 'AC1015']),
        ...variable('DWGCODEPAGE', [3, 'ANSI_1252']),
        ...variable('INSUNITS', [70, 4]),
        ...variable('MEASUREMENT', [70, 1]),
        ...variable('EXTMIN', [10, real(extent.minX)], [20, real(extent.minY)], [30, real(0)]),
        ...variable('EXTMAX', [10, real(extent.maxX)], [20, real(extent.maxY)], [30, real(0)]),
        ...variable('HANDSEED', [5, hex(this.next)]),
      ]),
      ...section('CLASSES', []),
      ...section('TABLES', tables),
      ...section('BLOCKS', [
        ...this.block('*Model_Space', HANDLE.modelSpace),
        ...this.block('*Paper_Space', HANDLE.paperSpace),
      ]),
      ...section('ENTITIES', this.entities),
      ...section('OBJECTS', OBJECTS),
      [0, 'EOF'],
    ];
    return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${String(value)}\r\n`).join('');
  }

  private entity(type: string, layer: string, subclass: string): void {
    this.entities.push([0, type], [5, hex(this.next++)], [330, hex(HANDLE.modelSpace)]);
    this.entities.push([100, 'AcDbEntity'], [8, layer], [100, subclass]);
  }

  private tables(): Group[] {
    const linetype = (name: string): Group[] => [
      [2, name],
      [70, 0],
      [3, ''],
      [72, 65],
      [73, 0],
      [40, real(0)],
    ];
    const layers = [{ name: '0', colour: 7 }, ...this.layers];
    return [
      ...this.table('VPORT', 'AcDbViewportTableRecord', []),
      ...this.table('LTYPE', 'AcDbLinetypeTableRecord', ['ByBlock', 'ByLayer', 'Continuous'].map(linetype)),
      ...this.table(
        'LAYER',
        'AcDbLayerTableRecord',
        layers.map(({ name, colour }): Group[] => [
          [2, name],
          [70, 0],
          [62, colour],
          [6, 'Continuous'],
        ]),
      ),
      ...this.table('STYLE', 'AcDbTextStyleTableRecord', [
        [
          [2, 'Standard'],
          [70, 0],
          [40, real(0)],
          [41, real(1)],
          [50, real(0)],
          [71, 0],
          [42, real(2.5)],
          [3, 'txt'],
          [4, ''],
        ],
      ]),
      ...this.table('VIEW', 'AcDbViewTableRecord', []),
      ...this.table('UCS', 'AcDbUCSTableRecord', []),
      ...this.table('APPID', 'AcDbRegAppTableRecord', [
        [
          [2, 'ACAD'],
          [70, 0],
        ],
      ]),
      ...this.table('DIMSTYLE', 'AcDbDimStyleTableRecord', [
        [
          [2, 'Standard'],
          [70, 0],
        ],
      ]),
      ...this.table(
        'BLOCK_RECORD',
        'AcDbBlockTableRecord',
        [[[2, '*Model_Space']], [[2, '*Paper_Space']]],
        [HANDLE.modelSpace, HANDLE.paperSpace],
      ),
    ];
  }

  private table(name: string, subclass: string, records: readonly Group[][], handles?: readonly number[]): Group[] {
    const own = this.tableHandle();
    const isDimension = name === 'DIMSTYLE';
    return [
      [0, 'TABLE'],
      [2, name],
      [5, own],
      [330, '0'],
      [100, 'AcDbSymbolTable'],
      [70, records.length],
      ...(isDimension ? ([[100, 'AcDbDimStyleTable']] as Group[]) : []),
      ...records.flatMap((record, i): Group[] => [
        [0, name],
        [isDimension ? 105 : 5, handles ? hex(handles[i]!) : this.tableHandle()],
        [330, own],
        [100, 'AcDbSymbolTableRecord'],
        [100, subclass],
        ...record,
      ]),
      [0, 'ENDTAB'],
    ];
  }

  /** The next free handle below those of the entities that is not one of the fixed parts. */
  private tableHandle(): string {
    if (this.nextTable === HANDLE.modelSpace) this.nextTable = HANDLE.groups + 1;
    return hex(this.nextTable++);
  }

  private block(name: string, record: number): Group[] {
    const common: Group[] = [
      [330, hex(record)],
      [100, 'AcDbEntity'],
      [8, '0'],
    ];
    return [
      [0, 'BLOCK'],
      [5, this.tableHandle()],
      ...common,
      [100, 'AcDbBlockBegin'],
      [2, name],
      [70, 0],
      [10, real(0)],
      [20, real(0)],
      [30, real(0)],
      [3, name],
      [1, ''],
      [0, 'ENDBLK'],
      [5, this.tableHandle()],
      ...common,
      [100, 'AcDbBlockEnd'],
    ];
  }
}

/** The dictionaries that a drawing of this release must have: the root, and in it the one of groups. */
const OBJECTS: readonly Group[] = [
  [0, 'DICTIONARY'],
  [5, HANDLE.rootDictionary.toString(16)],
  [330, '0'],
  [100, 'AcDbDictionary'],
  [281, 1],
  [3, 'ACAD_GROUP'],
  [350, HANDLE.groups.toString(16)],
  [0, 'DICTIONARY'],
  [5, HANDLE.groups.toString(16)],
  [330, HANDLE.rootDictionary.toString(16)],
  [100, 'AcDbDictionary'],
  [281, 1],
];

const section = (name: string, groups: readonly Group[]): Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...groups,
  [0, 'ENDSEC'],
];

const variable = (name: string, ...groups: readonly Group[]): Group[] => [[9, `$${name}`], ...groups];

const hex = (handle: number): string => handle.toString(16).toUpperCase();

/** Rounded once, to a millionth of a millimetre. */
function real(value: number): string {
  if (!Number.isFinite(value)) throw new Error('a drawing has a coordinate that is not a number');
  const text = (Number(value.toFixed(6)) + 0).toString();
  return text.includes('.') ? text : `${text}.0`;
}

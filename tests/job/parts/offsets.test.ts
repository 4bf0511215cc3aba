import { describe, expect, it } from 'vitest';
import { sayJobFinding } from '../../../src/job/finding.js';
import { readOffsets } from '../../../src/job/parts/offsets.js';

const said = (text: string): string[] => readOffsets(text, 't.csv', 'mm').findings.map(sayJobFinding);
const rows = '500,0,20,\n500,200,22,x\n500,210,35,\n500,0,80,\n';

describe('a table of offsets', () => {
  it('gives its stations and points with their lines', () => {
    const { stations, findings } = readOffsets(`station,y,z,edge\n${rows}`, 't.csv', 'mm');
    expect(findings).toEqual([]);
    expect(stations).toEqual([
      {
        x: 500,
        line: 2,
        points: [
          { y: 0, z: 20, edge: false, line: 2 },
          { y: 200, z: 22, edge: true, line: 3 },
          { y: 210, z: 35, edge: false, line: 4 },
          { y: 0, z: 80, edge: false, line: 5 },
        ],
      },
    ]);
  });

  // RFC 4180: a cell in quotes may hold the delimiter, and a quote within it is written twice; lines may end with CR
  // LF.
  it('is CSV as spreadsheets write it: quotes, semicolons, CR LF, a byte order mark, remarks and empty lines', () => {
    const text =
      '\uFEFF# our board\r\n"Station";"Y";"Z"\r\n"1 ft 8""";0;20\r\n"20 in";8;1 3/4 in\r\n\r\n20 in;0;"3"""\r\n';
    const { stations, findings } = readOffsets(text, 't.csv', 'mm');
    expect(findings).toEqual([]);
    expect(stations[0]!.points.map(({ y, z, line }) => [y, z, line])).toEqual([
      [0, 20, 3],
      [8, expect.closeTo(44.45, 9), 4],
      [0, expect.closeTo(76.2, 9), 6],
    ]);
  });

  it.each([
    ['nothing', '', 't.csv:1: the table is empty → begin with a line "station,y,z,edge", then one point a line'],
    [
      'a missing column',
      `station,y\n500,0\n`,
      `t.csv:1: the table's first line lacks z → begin with a line "station,y,z,edge"`,
    ],
    [
      'no first line',
      rows,
      `t.csv:1: the table's first line lacks station, y, z → begin with a line "station,y,z,edge"`,
    ],
    [
      'a wrong number',
      `station,y,z\n500,0,20\n500,2oo,30\n500,0,80\n`,
      't.csv:3: y: "oo" is not a unit of a length → write 19 mm, 1.9 cm, 3/4 in or 11 ft 4 in',
    ],
    [
      'an empty cell',
      `station,y,z\n500,0,20\n500,,30\n500,0,80\n`,
      't.csv:3: y: nothing is written where a length should be → write 19 mm, 1.9 cm, 3/4 in or 11 ft 4 in',
    ],
    [
      'a decimal comma',
      `station,y,z\n500,0,20\n500,200,30,5\n500,90,35\n500,0,80\n`,
      't.csv:3: 4 cells in this line, 3 in the first → one cell a column; a decimal comma makes two of one',
    ],
    [
      'an open quote',
      `station,y,z\n500,0,20\n500,"200,30\n500,0,80\n`,
      't.csv:3: a quoted cell does not end where it should → close it with ", and write a " within it twice: "3/4"""',
    ],
    [
      'a strange edge',
      `station,y,z,edge\n500,0,20,\n500,200,30,maybe\n500,0,80,\n`,
      't.csv:3: edge: "maybe" does not say whether the edge is hard → write x for a hard edge, nothing for a soft one',
    ],
    [
      'a keel off the centre',
      `station,y,z\n500,5,20\n500,200,30\n500,0,80\n`,
      't.csv:2: y: the first (the keel) point of the station is 5 mm off the centreline → 0 there',
    ],
    [
      'a deck below the bottom',
      `station,y,z\n500,0,80\n500,200,30\n500,0,20\n`,
      't.csv:4: z: the deck lies no higher than the bottom → list the points from the keel out and over the deck',
    ],
    [
      'a section that goes back',
      `station,y,z\n500,0,20\n500,150,21\n500,120,22\n500,200,30\n500,0,80\n`,
      't.csv:4: y: the section goes back on itself here → y rises from the keel to the widest point, and falls from there to the deck at the centreline',
    ],
    [
      'stations out of order',
      `station,y,z\n500,0,20\n500,200,30\n500,0,80\n400,0,20\n400,200,30\n400,0,80\n`,
      't.csv:5: station: the station at 400 mm follows one at 500 mm → list the stations from nose to tail, the points of each together',
    ],
    [
      'too few points',
      `station,y,z\n500,0,20\n500,0,80\n`,
      't.csv:2: the station at 500 mm has 2 points → at least three: keel, widest point, deck at the centreline',
    ],
    [
      'noise',
      '\u0000\u0001\u0002',
      't.csv:1: the file holds characters that no text has; it is not a table of offsets → a text file: save it as plain text, encoding UTF-8, line endings LF (Unix) or CRLF (Windows)',
    ],
  ])('with %s says so, with its line', (_, text, expected) => {
    expect(said(text)).toContain(expected);
  });
});

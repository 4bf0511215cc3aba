import { printAs } from '../length/rounded.js';
import { printWeight } from '../length/weight.js';
import type { Bench, BenchState } from './state/bench.js';
import { FromAbove } from './picture/FromAbove.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { Shown } from './plan/answer.js';
import { isSound, printDifference, printVolume, weightStages } from './Strip.js';
import { Mistakes } from './Notes.js';
import { spoken } from './state/words.js';

/** A second job beside the first: its board from above, and walls, weights and blocks of both in one table. */
export function Compare({
  bench,
  state,
  shown,
}: {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}) {
  const { other, units } = state;
  if (!other) return null;
  return (
    <section class="compare" aria-labelledby="compare-title">
      <header>
        <h2 id="compare-title">Compared with {other.file.name}</h2>
        <button type="button" onClick={() => bench.compare(undefined)}>
          Close
        </button>
      </header>
      {!other.shown && <Mistakes state={{ ...state, findings: other.findings, shown: undefined }} />}
      {other.shown && (
        <>
          <FromAbove bench={bench} state={{ ...state, visible: undefined }} shown={other.shown} isOther />
          <table>
            <caption>Both plans</caption>
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">{shown.result.job}</th>
                <th scope="col">{other.shown.result.job}</th>
                <th scope="col">difference</th>
              </tr>
            </thead>
            <tbody>
              {rowsOf(shown, other.shown, units).map(([name, mine, theirs, difference]) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>{mine}</td>
                  <td>{theirs}</td>
                  <td>{difference}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function rowsOf(a: Shown, b: Shown, units: BenchState['units']): [string, string, string, string][] {
  const both = (name: string, of: (shown: Shown) => string, difference = ''): [string, string, string, string] => [
    name,
    of(a),
    of(b),
    difference,
  ];
  const thinnest = (wall: Patch) => (shown: Shown) => {
    const walls = shown.result.chambers.map((chamber) => chamber.wall[wall]);
    return walls.length === 0 ? '–' : printAs('there', Math.min(...walls), units);
  };
  const theirs = new Map(weightStages(b.result.weights));
  return [
    both('walls', ({ result }) => (isSound(result) ? 'all as asked' : 'thinner than asked')),
    ...PATCHES.map((wall) => both(`thinnest ${wall} wall`, thinnest(wall))),
    ...weightStages(a.result.weights).map(([stage, kg]): [string, string, string, string] => {
      const other = theirs.get(stage);
      const text = other === undefined ? '–' : printWeight(other, units);
      return [
        `${spoken(stage)} weight`,
        printWeight(kg, units),
        text,
        other === undefined ? '' : printDifference(other - kg, units),
      ];
    }),
    both('blocks', ({ result }) => `${result.blocks.length}`, signed(b.result.blocks.length - a.result.blocks.length)),
    both('block foam', ({ result }) =>
      printVolume(
        result.blocks.reduce((sum, { volume }) => sum + volume, 0),
        units,
      ),
    ),
    both('left solid', ({ result }) => `${result.notes.filter(({ kind }) => kind === 'solid').length} places`),
  ];
}

function signed(count: number): string {
  return count < 0 ? `−${-count}` : `+${count}`;
}

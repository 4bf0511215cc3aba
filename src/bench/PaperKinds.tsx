import type { KindOfPaper } from '../open/api.js';

interface Props {
  readonly kinds: readonly KindOfPaper[];
  /** Names of the papers of the phase at hand, where one is chosen. */
  readonly ofPhase: readonly string[] | undefined;
  /** Names of the papers that are made. */
  readonly chosen: ReadonlySet<string>;
  readonly choose: (names: ReadonlySet<string>) => void;
}

type Group = readonly [legend: string, isIn: (kind: KindOfPaper) => boolean];

const GROUPS: readonly Group[] = [
  ['To print', ({ goes }) => goes === 'to print'],
  ['To look at, in a file of its own', ({ goes }) => goes === 'to look at'],
  ['Only when ticked', ({ goes }) => goes === 'on request'],
];

/** All that belongs to a phase is printed, what is otherwise only looked at too. */
function groupsOf(ofPhase: readonly string[]): readonly Group[] {
  const belongs = ({ names }: KindOfPaper) => names.some((name) => ofPhase.includes(name));
  return [
    ['Of this phase, to print', belongs],
    ['Only when ticked', (kind) => !belongs(kind)],
  ];
}

/** The kinds of paper to make, each with what it takes; those of several sheets can be had sheet by sheet. */
export function PaperKinds({ kinds, ofPhase, chosen, choose }: Props) {
  const toggle = (names: readonly string[], isWanted: boolean) => {
    const others = [...chosen].filter((name) => !names.includes(name));
    choose(new Set(isWanted ? [...others, ...names] : others));
  };
  return (
    <>
      {(ofPhase ? groupsOf(ofPhase) : GROUPS).map(([legend, isIn]) => {
        const own = kinds.filter(isIn);
        return (
          own.length > 0 && (
            <fieldset class="choices" key={legend}>
              <legend>{legend}</legend>
              {own.map(({ kind, names, pages, tape }) => {
                const wanted = names.filter((name) => chosen.has(name)).length;
                return (
                  <div key={kind}>
                    <label>
                      <input
                        type="checkbox"
                        data-paper-kind={kind}
                        checked={wanted === names.length}
                        ref={(box) => {
                          if (box) box.indeterminate = wanted > 0 && wanted < names.length;
                        }}
                        onChange={({ currentTarget }) => toggle(names, currentTarget.checked)}
                      />
                      {kind}: {pages} {pages === 1 ? 'page' : 'pages'}
                      {tape !== undefined && `, ${tape} of tape`}
                    </label>
                    {names.length > 1 && (
                      <details>
                        <summary>one by one</summary>
                        {names.map((name) => (
                          <label key={name}>
                            <input
                              type="checkbox"
                              checked={chosen.has(name)}
                              onChange={({ currentTarget }) => toggle([name], currentTarget.checked)}
                            />
                            {name}
                          </label>
                        ))}
                      </details>
                    )}
                  </div>
                );
              })}
            </fieldset>
          )
        );
      })}
    </>
  );
}

import type { KindOfPaper } from '../open/api.js';

interface Props {
  readonly kinds: readonly KindOfPaper[];
  /** Names of the papers that are made. */
  readonly chosen: ReadonlySet<string>;
  readonly choose: (names: ReadonlySet<string>) => void;
}

const GROUPS = [
  ['to print', 'To print'],
  ['to look at', 'To look at, in a file of its own'],
  ['on request', 'Only when ticked'],
] as const;

/** The kinds of paper to make, each with what it takes; those of several sheets can be had sheet by sheet. */
export function PaperKinds({ kinds, chosen, choose }: Props) {
  const toggle = (names: readonly string[], isWanted: boolean) => {
    const others = [...chosen].filter((name) => !names.includes(name));
    choose(new Set(isWanted ? [...others, ...names] : others));
  };
  return (
    <>
      {GROUPS.map(([goes, legend]) => {
        const own = kinds.filter((each) => each.goes === goes);
        return (
          own.length > 0 && (
            <fieldset class="choices" key={goes}>
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

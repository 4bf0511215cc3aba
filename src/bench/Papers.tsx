import { useEffect, useRef, useState } from 'preact/hooks';
import type { Bench, BenchState } from './state/bench.js';
import type { Jobs } from './save/jobs.js';

interface Page {
  readonly page: number;
  readonly title: string;
  readonly picture: string;
}

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly jobs: Jobs;
}

/**
 * The papers of what is on the bench: made on asking, looked at sheet by sheet, and handed over as one file to print.
 */
export function Papers({ bench, state, jobs }: Props) {
  const [names, setNames] = useState<Awaited<ReturnType<Jobs['paperNames']>> | undefined>(undefined);
  const [paper, setPaper] = useState(state.units === 'mm' ? 'A4' : 'Letter');
  const [only, setOnly] = useState<readonly string[]>([]);
  const [pages, setPages] = useState<readonly Page[]>([]);
  const [total, setTotal] = useState(0);
  const [file, setFile] = useState<string | undefined>(undefined);
  const [looked, setLooked] = useState(1);
  const [said, setSaid] = useState('');
  const stop = useRef<AbortController | undefined>(undefined);
  const { name } = state.file;
  const { text } = state.history;
  const made = useRef<string | undefined>(undefined);

  const forget = () => {
    for (const { picture } of pages) URL.revokeObjectURL(picture);
    if (file !== undefined) URL.revokeObjectURL(file);
    setPages([]);
    setFile(undefined);
    setTotal(0);
  };
  const open = () => {
    if (!names) jobs.paperNames(name, text).then(setNames, (error: Error) => setSaid(error.message));
  };
  const make = async () => {
    forget();
    setSaid('Making the papers …');
    setLooked(1);
    const ending = new AbortController();
    stop.current = ending;
    made.current = text;
    try {
      await jobs.papers(
        { name, text, paper, ...(only.length > 0 && { only }) },
        (news) => {
          if (news.kind === 'laid') {
            setTotal(news.pages);
            if (only.length === 0) bench.show({ papers: { pages: news.pages, sheet: paper, text } });
          } else if (news.kind === 'page') {
            const picture = URL.createObjectURL(new Blob([news.svg], { type: 'image/svg+xml' }));
            setPages((before) => [...before, { page: news.page, title: news.title, picture }]);
            setSaid(`Page ${news.page} is ready …`);
          } else if (news.kind === 'file') {
            const bytes = Uint8Array.from(atob(news.base64), (letter) => letter.charCodeAt(0));
            setFile(URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' })));
            setSaid(`${news.pages} pages are ready to print: print at actual size (100 %), never fitted to the page.`);
          } else setSaid(news.why);
        },
        ending.signal,
      );
    } catch (error) {
      setSaid(ending.signal.aborted ? 'Stopped.' : (error as Error).message);
    }
    stop.current = undefined;
  };
  useEffect(() => () => stop.current?.abort(), []);
  const page = pages[looked - 1];
  const isWorking = total > pages.length || (total > 0 && file === undefined && stop.current !== undefined);

  return (
    <details class="card papers" onToggle={({ currentTarget }) => currentTarget.open && open()}>
      <summary>Papers and labels</summary>
      <div class="choices">
        <label>
          Paper{' '}
          <select value={paper} onChange={({ currentTarget }) => setPaper(currentTarget.value)}>
            {(names?.papers ?? [paper]).map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <button
          type="button"
          class="main"
          data-make-papers
          onClick={() => void make()}
          disabled={!state.isCurrent || isWorking}
        >
          Make {only.length === 0 ? 'all papers' : `${only.length} of them`}
        </button>
        {isWorking && (
          <button type="button" onClick={() => stop.current?.abort()}>
            Stop
          </button>
        )}
        {file !== undefined && (
          <a href={file} download={`${name.replace(/\.\w+$/, '')}.pdf`} data-papers-file>
            Save the PDF to print
          </a>
        )}
      </div>
      {names && (
        <fieldset class="choices">
          <legend>Only these papers</legend>
          {names.names.map((each) => (
            <label key={each}>
              <input
                type="checkbox"
                checked={only.includes(each)}
                onChange={({ currentTarget }) =>
                  setOnly(currentTarget.checked ? [...only, each] : only.filter((other) => other !== each))
                }
              />
              {each}
            </label>
          ))}
        </fieldset>
      )}
      <p role="status" data-papers-said>
        {said}
        {made.current !== undefined && made.current !== text && ' The job has been changed since.'}
      </p>
      {total > 0 && <progress max={total} value={pages.length} aria-label="Pages drawn" />}
      {page && (
        <figure>
          <figcaption>
            <button
              type="button"
              aria-label="Previous page"
              disabled={looked <= 1}
              onClick={() => setLooked(looked - 1)}
            >
              ‹
            </button>{' '}
            Page <span data-papers-page>{looked}</span> of <span data-papers-pages>{total}</span>: {page.title}{' '}
            <button
              type="button"
              aria-label="Next page"
              disabled={looked >= pages.length}
              onClick={() => setLooked(looked + 1)}
            >
              ›
            </button>
          </figcaption>
          <img src={page.picture} alt={`Page ${looked}: ${page.title}`} />
        </figure>
      )}
    </details>
  );
}

import { useEffect, useRef, useState } from 'preact/hooks';
import type { Bench, BenchState } from './state/bench.js';
import { PaperKinds } from './PaperKinds.js';
import type { Jobs } from './save/jobs.js';

interface Page {
  readonly page: number;
  readonly title: string;
  readonly picture: string;
}

interface PdfOnPage {
  readonly name: string;
  readonly pages: number;
  readonly address: string;
}

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly jobs: Jobs;
}

/**
 * The papers of what is on the bench: made on asking, looked at sheet by sheet, and handed over as files to print.
 */
export function Papers({ bench, state, jobs }: Props) {
  const [names, setNames] = useState<Awaited<ReturnType<Jobs['paperNames']>> | undefined>(undefined);
  const [paper, setPaper] = useState(state.units === 'mm' ? 'A4' : 'Letter');
  const [chosen, setChosen] = useState<ReadonlySet<string> | undefined>(undefined);
  const [phase, setPhase] = useState<string | undefined>(undefined);
  const [pages, setPages] = useState<readonly Page[]>([]);
  const [total, setTotal] = useState(0);
  const [files, setFiles] = useState<readonly PdfOnPage[]>([]);
  const [isMaking, setIsMaking] = useState(false);
  const [looked, setLooked] = useState(1);
  const [said, setSaid] = useState('');
  const stop = useRef<AbortController | undefined>(undefined);
  const { name } = state.file;
  const { text } = state.history;
  const made = useRef<string | undefined>(undefined);

  const forget = () => {
    for (const { picture } of pages) URL.revokeObjectURL(picture);
    for (const { address } of files) URL.revokeObjectURL(address);
    setPages([]);
    setFiles([]);
    setTotal(0);
  };
  // What is there and what it takes is asked again for another sheet, and for a job that was changed.
  const ask = (sheet: string, ofPhase: string | undefined) =>
    jobs.paperNames(name, text, sheet, ofPhase).then(setNames, (error: Error) => setSaid(error.message));
  const atHand = names?.phases.find(({ id }) => id === phase);
  const usual = atHand?.names ?? (names?.kinds ?? []).flatMap((each) => (each.goes === 'on request' ? [] : each.names));
  const there = (names?.kinds ?? []).flatMap((each) => each.names);
  const wanted = new Set(chosen ? there.filter((each) => chosen.has(each)) : usual);
  const isUsual = wanted.size === usual.length && usual.every((each) => wanted.has(each));
  const some = isUsual
    ? undefined
    : atHand
      ? {
          with: [...wanted].filter((each) => !usual.includes(each)),
          without: usual.filter((each) => !wanted.has(each)),
        }
      : { only: [...wanted] };
  const make = async () => {
    forget();
    setSaid('Making the papers …');
    setIsMaking(true);
    setLooked(1);
    const ending = new AbortController();
    stop.current = ending;
    made.current = text;
    try {
      await jobs.papers(
        { name, text, paper, ...(atHand && { phase: atHand.id }), ...some },
        (news) => {
          if (news.kind === 'laid') {
            setTotal(news.pages);
            if (!some && !atHand) bench.show({ papers: { pages: news.pages, sheet: paper, text } });
          } else if (news.kind === 'page') {
            const picture = URL.createObjectURL(new Blob([news.svg], { type: 'image/svg+xml' }));
            setPages((before) => [...before, { page: news.page, title: news.title, picture }]);
            setSaid(`Page ${news.page} is ready …`);
          } else if (news.kind === 'file') {
            const bytes = Uint8Array.from(atob(news.base64), (letter) => letter.charCodeAt(0));
            const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
            setFiles((before) => [...before, { name: news.name, pages: news.pages, address }]);
            setSaid('The papers are ready: print at actual size (100 %), never fitted to the page.');
          } else setSaid(news.why);
        },
        ending.signal,
      );
    } catch (error) {
      setSaid(ending.signal.aborted ? 'Stopped.' : (error as Error).message);
    }
    stop.current = undefined;
    setIsMaking(false);
  };
  useEffect(() => () => stop.current?.abort(), []);
  const page = pages[looked - 1];

  return (
    <details class="card papers" onToggle={({ currentTarget }) => currentTarget.open && void ask(paper, atHand?.id)}>
      <summary>Papers and labels</summary>
      <div class="choices">
        <label>
          Paper{' '}
          <select
            value={paper}
            onChange={({ currentTarget }) => {
              setPaper(currentTarget.value);
              void ask(currentTarget.value, atHand?.id);
            }}
          >
            {(names?.papers ?? [paper]).map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label>
          Phase{' '}
          <select
            data-paper-phase
            value={atHand?.id ?? ''}
            onChange={({ currentTarget: { value } }) => {
              const next = value === '' ? undefined : value;
              setPhase(next);
              setChosen(undefined);
              void ask(paper, next);
            }}
          >
            <option value="">all phases</option>
            {names?.phases.map(({ id, title, state }) => (
              <option key={id} value={id}>
                {title}
                {state === 'now' && ', you are here'}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          class="main"
          data-make-papers
          onClick={() => void make()}
          disabled={!state.isCurrent || isMaking || wanted.size === 0}
        >
          Make {some ? `${wanted.size} of them` : atHand ? 'the papers of this phase' : 'the papers'}
        </button>
        {isMaking && (
          <button type="button" onClick={() => stop.current?.abort()}>
            Stop
          </button>
        )}
        {files.map((file) => (
          <a
            key={file.name}
            href={file.address}
            download={`${name.replace(/\.\w+$/, '')}-${file.name}`}
            data-papers-file={file.name}
          >
            Save {file.name}, {file.pages} pages
          </a>
        ))}
      </div>
      {names && <PaperKinds kinds={names.kinds} ofPhase={atHand?.names} chosen={wanted} choose={setChosen} />}
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

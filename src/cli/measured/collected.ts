import words from '../../../templates/measuring.json' with { type: 'json' };
import { withMeasure, writtenNow, type Draft, type NotTaken, type Taken } from '../../measured/intoJob.js';
import { sayMeasure, valueOf, type Measure } from '../../measured/measure.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import type { ReadJob } from '../../job/whole/read.js';

/** Measures as they come in, each held against the job as soon as it is there. */
export interface Collected {
  /** What a measure makes of the job, in the place of an earlier one of the same place; or why it cannot be taken. */
  readonly tried: (measure: Measure) => Taken | NotTaken;
  readonly take: (measure: Measure, tried: Taken) => void;
  /** What the job would say of a measure's place. */
  readonly now: (measure: Measure) => string | undefined;
  readonly measures: () => readonly Measure[];
  readonly draft: () => Draft;
  /** What goes into the job, line by line. */
  readonly changes: () => readonly string[];
}

/**
 * Collects measures of a job.
 *
 * @param start what the job says so far
 * @param reread reads another text of it
 */
export function collecting(start: Draft, reread: (text: string) => ReadJob, plan: Plan): Collected {
  let draft = start;
  const taken = new Map<string, { readonly measure: Measure; readonly doubts: Taken['doubts'] }>();
  const chambers = (plan.drawn ?? plan).chambers.map(({ id }) => id);
  return {
    tried(measure) {
      const chamber = Object.fromEntries(measure.item).chamber;
      if (chamber !== undefined && !chambers.includes(chamber)) {
        const { what, remedy } = words.chamber;
        return { what: say(what, { chamber }), remedy: say(remedy, { like: chambers[0] ?? '-' }) };
      }
      return withMeasure(draft, measure, reread);
    },
    take(measure, tried) {
      draft = tried;
      taken.set(placeOf(measure), { measure, doubts: tried.doubts });
    },
    now: (measure) => writtenNow(draft, measure),
    measures: () => [...taken.values()].map(({ measure }) => measure),
    draft: () => draft,
    changes: () =>
      [...taken.values()].flatMap(({ measure, doubts }) => {
        const before = writtenNow(start, measure);
        const { added, changed, doubt } = words.said;
        if (before === valueOf(measure)[1]) return [];
        const line = before === undefined ? say(added, said(measure)) : say(changed, { ...said(measure), before });
        return [line, ...doubts.map(({ what, remedy }) => say(doubt, { what, remedy }))];
      }),
  };
}

const said = (measure: Measure) => ({ list: measure.list, measure: sayMeasure(measure) });

/** All but what came out. */
function placeOf(measure: Measure): string {
  const [key] = valueOf(measure);
  return [...measure.item.filter(([name]) => name !== key && name !== 'off').flat(), key].join(' ');
}

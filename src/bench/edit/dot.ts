import { parseDocument, stringify } from 'yaml';
import type { Job } from '../../job/job.js';
import { jointNamed } from '../../job/names.js';
import type { Result } from '../../view/result.js';
import { documentOf } from '../../job/edit/document.js';
import { withValue } from '../../job/edit/value.js';
import { ruleStep, writtenLength } from '../../job/edit/written.js';

/** A dot as the plan publishes it. */
type Dot = Result['dots'][number];

/**
 * The job's text with a dot moved, in whole marks of the rule. Where a joint's dots are planned, all of them are
 * written down as they are on show, the moved one where it was put: from then on they are the builder's.
 *
 * @param dots all dots of the plan on show
 * @param id the dot's: `DR2.3`
 * @param dx how far toward the tail, mm; `dz` how far up
 */
export function withDotMoved(text: string, job: Job, dots: readonly Dot[], id: string, dx: number, dz: number): string {
  const dot = dots.find((each) => each.id === id);
  if (!dot) return text;
  const { units } = job;
  const step = ruleStep(units);
  const onRule = (mm: number) => Math.round(mm / step) * step;
  const [along, up] = [onRule(dx), onRule(dz)];
  if (along === 0 && up === 0) return text;
  const x = Math.min(Math.max(dot.x + along, 0), job.board.length);

  const file = documentOf(text).toJS() as {
    dots?: { glued?: readonly { joint?: string; dots?: readonly Record<string, unknown>[] }[] };
  };
  const glued = file.dots?.glued ?? [];
  const entry = glued.findIndex(({ joint }) => joint !== undefined && jointNamed(joint) === dot.joint);
  const ofJoint = dots.filter(({ joint }) => joint === dot.joint);
  const written = glued[entry]?.dots;
  const place = ofJoint.indexOf(dot);
  // Heights in the file are told over the blank's underside.
  const upInFile = (z: number) => z + job.dots.blank.below;
  if (written && written.length === ofJoint.length) {
    const inJob = job.dots.glued.find(({ joint }) => joint === dot.joint)!.dots!;
    const order = inJob.map((each, i) => ({ x: each.x, i }));
    const line = order.toSorted((a, b) => a.x - b.x)[place]!.i;
    const path = (key: string) => ['dots', 'glued', entry, 'dots', line, key];
    const before = written[line]!;
    const [key, value] =
      'fromTail' in before
        ? ['fromTail', job.board.length - x]
        : 'fromBlank' in before
          ? ['fromBlank', x + job.dots.blank.nose]
          : ['at', x];
    let moved =
      along === 0
        ? text
        : withValue(text, path(key as string), writtenLength(value as number, units, before[key as string]));
    if (up === 0) return moved;
    // In the way in which its height was written.
    const { height } = inJob[line]!;
    const [way, mm] =
      height && 'overBottom' in height
        ? (['overBottom', height.overBottom + up] as const)
        : height && 'underDeck' in height
          ? (['underDeck', height.underDeck - up] as const)
          : (['up', upInFile(dot.z + up)] as const);
    moved = withValue(moved, path(way), writtenLength(mm, units, before[way]));
    return moved;
  }
  const list = ofJoint.map((each) => ({
    at: each === dot ? x : each.x,
    up: upInFile(each === dot ? dot.z + up : each.z),
  }));
  return withGlued(text, job, dot.joint, list);
}

/** Writes a joint's dots down: the one place where the file is laid out anew, in its own section only. */
function withGlued(
  text: string,
  job: Job,
  joint: string,
  dots: readonly { readonly at: number; readonly up: number }[],
): string {
  const written = (mm: number) => {
    const length = writtenLength(mm, job.units, undefined);
    return Number.isNaN(Number(length)) ? length : Number(length);
  };
  // This one is changed, so it is not the kept one.
  const document = parseDocument(text);
  const glued = (document.toJS() as { dots?: { glued?: { joint: string }[] } }).dots?.glued ?? [];
  const entry = document.createNode({ joint, dots: dots.map(({ at, up }) => ({ at: written(at), up: written(up) })) });
  const found = glued.findIndex((each) => jointNamed(each.joint) === joint);
  if (glued.length === 0 && !document.has('dots')) {
    const lines = stringify({ dots: { glued: [entry] } }, { lineWidth: 0 });
    return `${text.endsWith('\n') ? text : `${text}\n`}\n${lines}`;
  }
  if (found >= 0) document.setIn(['dots', 'glued', found, 'dots'], document.createNode(entry.toJS(document).dots));
  else if (glued.length > 0) document.addIn(['dots', 'glued'], entry);
  else document.setIn(['dots', 'glued'], document.createNode([entry.toJS(document)]));
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}

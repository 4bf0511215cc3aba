import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import words from '../../templates/measuring.json' with { type: 'json' };
import { diskFinding } from '../disk/diskFinding.js';
import { replaceFile } from '../disk/replace.js';
import { textFile } from '../disk/textFile.js';
import { counted } from '../length/counted.js';
import { listText, readList } from '../measured/list.js';
import { sayMeasure } from '../measured/measure.js';
import { planOf, type Plan } from '../plan.js';
import { understood } from '../typed/args.js';
import { say } from '../words/say.js';
import { REFUSED, TO_ACT_ON, WELL, type Command, type Io } from './io.js';
import { jobFrom, type JobRead } from './jobFile.js';
import { judged } from './judged.js';
import { refuse } from './refuse.js';
import { shrinkingOf } from './shrinking.js';
import { askMeasures } from './measured/ask.js';
import { collecting, type Collected } from './measured/collected.js';

const ENDING = '.measured.csv';

/** Asks for what was measured, or takes a list of it, and writes it into the job when it is told to. */
export const measuredCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { from: { type: 'string' }, write: { type: 'boolean' } }, 1);
    if ('remedy' in asked) return refuse(io, asked, 'measured');
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const plan = planOf(read.job);
    const into = collecting(read, read.reread, plan);
    const { from, write = false } = asked.values;
    return from === undefined ? answered(read, plan, into, io) : listed(from, write, read, into, io);
  },
};

/** From a list: all of it or nothing. */
async function listed(from: string, write: boolean, read: JobRead, into: Collected, io: Io): Promise<number> {
  if (!takenFrom(from, into, io)) return REFUSED;
  const isWell = told(read, into, io);
  if (isWell === undefined) return WELL;
  if (write) return (await put(read, into, from, io)) ? ended(isWell) : REFUSED;
  io.out(words.said.notYet);
  return ended(isWell);
}

/** From a builder who measures, place by place. What was answered is kept beside the job until it is in it. */
async function answered(read: JobRead, plan: Plan, into: Collected, io: Io): Promise<number> {
  const file = basename(read.file);
  const list = join(dirname(read.file), file.replace(/\.(ya?ml|json)$/i, '') + ENDING);
  const names = { file, list: basename(list) };
  const { intro, units, weights } = words.ask;
  const bare = { units: units[plan.job.units], weight: weights[plan.job.units] };
  intro.forEach((line) => io.out(say(line, { file, ...bare })));
  if (existsSync(list)) {
    if (!takenFrom(list, into, io)) return REFUSED;
    io.out(say(words.ask.kept, { ...names, count: counted(into.measures().length, 'measure') }));
  }
  const keep = () => kept(list, into, io);
  const how = await askMeasures(plan, into, io, keep);
  if (how === 'stopped') {
    if (into.measures().length === 0) io.out(say(words.said.none, names));
    else io.out(say(words.said.stopped, names));
    return WELL;
  }
  const isWell = told(read, into, io);
  if (isWell === undefined) return WELL;
  if (!(await isTold(file, io))) {
    io.out(say(words.said.no, names));
    return WELL;
  }
  if (!(await put(read, into, names.list, io))) return REFUSED;
  await rm(list, { force: true });
  return ended(isWell);
}

const ended = (isWell: boolean): number => (isWell ? WELL : TO_ACT_ON);

/** Takes all measures of a list; says each that cannot be. */
function takenFrom(list: string, into: Collected, io: Io): boolean {
  const text = textFile(list);
  if (typeof text !== 'string') {
    refuse(io, { ...text, remedy: text.remedy });
    return false;
  }
  const read = readList(text, list);
  if ('remedy' in read) {
    refuse(io, read);
    return false;
  }
  let wrong = 0;
  for (const { line, measure } of read) {
    const tried = into.tried(measure);
    if (!('remedy' in tried)) into.take(measure, tried);
    else {
      wrong++;
      refuse(io, { ...tried, where: say(words.list.line, { name: list, line, measure: sayMeasure(measure) }) });
    }
  }
  if (wrong > 0) io.err(say(words.list.wrong, { count: counted(wrong, 'measure'), name: list }));
  return wrong === 0;
}

/** Says what goes into the job and what the walls are then; gives whether all is well, nothing where nothing goes. */
function told(read: JobRead, into: Collected, io: Io): boolean | undefined {
  const file = basename(read.file);
  const changes = into.changes();
  if (changes.length === 0) {
    io.out(say(words.said.none, { file }));
    return undefined;
  }
  io.out(say(words.said.head, { file }));
  changes.forEach((line) => io.out(line));
  io.out(words.said.planning);
  const plan = planOf(into.draft().job);
  const shrinking = shrinkingOf(plan);
  shrinking?.summary.forEach((line) => io.out(line));
  return judged(plan, io) && !shrinking?.must;
}

async function isTold(file: string, io: Io): Promise<boolean> {
  for (;;) {
    const typed = (await io.ask(say(words.ask.write, { file })))?.trim().toLowerCase();
    if (typed === 'yes' || typed === 'y') return true;
    if (typed === undefined || typed === 'no' || typed === 'n') return false;
    io.err(`  ${words.ask.yesOrNo}`);
  }
}

/** Keeps what was answered so far. */
async function kept(list: string, into: Collected, io: Io): Promise<boolean> {
  try {
    await replaceFile(list, listText(into.measures()));
    return true;
  } catch (error) {
    refuse(io, diskFinding(list, error));
    return false;
  }
}

/** Writes the job, unless somebody else did meanwhile. */
async function put({ file, text }: JobRead, into: Collected, list: string, io: Io): Promise<boolean> {
  const names = { file: basename(file), list };
  if (textFile(file) !== text) {
    const { what, remedy } = words.changedMeanwhile;
    refuse(io, { where: file, what, remedy: say(remedy, names) });
    return false;
  }
  try {
    await replaceFile(file, into.draft().text);
  } catch (error) {
    refuse(io, diskFinding(file, error));
    return false;
  }
  io.out(say(words.said.written, names));
  return true;
}

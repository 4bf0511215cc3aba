// npm run mutate [ROOM…] [-- COUNT SEED]: puts small faults into the rooms that compute, one at a time and never on the
// disk, and tells which of them no test sees. COUNT is how many a room; what was found is kept in `.mutate.json`.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { faultsIn } from './mutate/faults.mjs';
import { hashOf, importsOf, PROOFS, ROOMS, sourcesOf, testsOf } from './mutate/rooms.mjs';
import { told } from './mutate/told.mjs';
import { trials } from './mutate/trials.mjs';

const KEPT = '.mutate.json';
/** Tests that take longer, ms, are asked after the proof of the samples. */
const LONG = 10_000;
/** No fault is worth more, ms: tests are asked in their order as long as what they usually take is within it. */
const ENOUGH = 45_000;
const LONGEST = 600_000;

const words = process.argv.slice(2).filter((word) => word !== '--');
const asked = words.filter((word) => ROOMS.includes(word));
const [count = '25', seed = '1', ...more] = words.filter((word) => !ROOMS.includes(word));
if (![count, seed].every((word) => /^\d+$/.test(word)) || more.length > 0) {
  console.error(`npm run mutate [ROOM…] [-- COUNT SEED], rooms: ${ROOMS.join(', ')}`);
  process.exit(2);
}
const kept = existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, 'utf8')) : { took: {}, found: {} };
const remember = () => writeFileSync(KEPT, JSON.stringify(kept));
const equivalent = JSON.parse(readFileSync(new URL('mutate/equivalent.json', import.meta.url), 'utf8'));
const { run, stop } = trials();
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => {
    stop();
    process.exit(1);
  });

/** Every test of a room must pass without a fault, or it says nothing. */
async function timed(tests) {
  for (const test of tests) {
    const state = hashOf([test, ...importsOf(test, true)]);
    if (kept.took[test]?.state === state) continue;
    const { failed, ms } = await run(test, LONGEST);
    if (failed) throw new Error(`${test} ${failed} without any fault`);
    kept.took[test] = { state, ms };
    remember();
  }
}

/** Those that import the file by themselves, of any room; the room's own; the proof; the long ones: what is enough. */
function inOrder(file, tests) {
  const ms = (test) => kept.took[test].ms;
  const rank = (test) => (PROOFS.includes(test) ? 2 : ms(test) > LONG ? 3 : importsOf(test).has(file) ? 0 : 1);
  const own = new Set(testsOf(file.split('/')[1]));
  const near = tests.filter((test) => importsOf(test, own.has(test) || PROOFS.includes(test)).has(file));
  let sum = 0;
  return near.sort((a, b) => rank(a) - rank(b) || ms(a) - ms(b)).filter((test) => (sum += ms(test)) <= ENOUGH);
}

async function seen({ file, text, start, end, to }, name, tests) {
  const before = kept.found[name];
  const source = hashOf([file]);
  if (before?.source === source && before.tests === hashOf(before.by ? [before.by] : tests)) return before.by;
  const faulty = text.slice(0, start) + to + text.slice(end);
  let by;
  for (const test of tests) {
    if (by) break;
    const { failed } = await run(test, kept.took[test].ms, { file, text: faulty });
    if (failed) by = test;
  }
  kept.found[name] = { source, by, tests: hashOf(by ? [by] : tests) };
  remember();
  return by;
}

/** So many faults of a room, drawn by the seed: each keeps its rank when other files change. */
function drawn(room) {
  const faults = sourcesOf(room).flatMap((file) => {
    const text = readFileSync(file, 'utf8');
    const lines = text.split('\n');
    const times = new Map();
    return faultsIn(file, text).map((fault) => {
      const code = lines[fault.line - 1].trim();
      const same = [file, code, fault.from, fault.to].join('\n');
      times.set(same, (times.get(same) ?? 0) + 1);
      const nth = times.get(same);
      return { ...fault, room, file, text, code, nth, name: `${same}\n${nth}` };
    });
  });
  const rank = ({ name }) => createHash('sha256').update(`${seed}\n${name}`).digest('hex');
  const isSame = (fault) => (each) =>
    ['file', 'code', 'from', 'to'].every((key) => each[key] === fault[key]) && (each.nth ?? 1) === fault.nth;
  const why = (fault) => equivalent.find(isSame(fault))?.why;
  const ranked = faults.map((fault) => ({ ...fault, rank: rank(fault), same: why(fault) }));
  return ranked.sort((a, b) => (a.rank < b.rank ? -1 : 1)).slice(0, Number(count));
}

const results = [];
for (const room of asked.length > 0 ? asked : ROOMS) {
  const sources = sourcesOf(room);
  const others = ROOMS.flatMap(testsOf).filter((test) => sources.some((file) => importsOf(test).has(file)));
  const tests = [...new Set([...testsOf(room), ...others, ...PROOFS])];
  await timed(tests);
  for (const fault of drawn(room)) {
    const by = fault.same ? undefined : await seen(fault, fault.name, inOrder(fault.file, tests));
    results.push({ ...fault, by });
    if (!by && !fault.same) console.log(`${fault.file}:${fault.line}  ${fault.from} → ${fault.to}    ${fault.code}`);
  }
}
stop();
console.log(told(results, seed));

// Runs tests with a fault in one file, in a process of its own that may be ended when a fault makes them run for ever.
import { createVitest } from 'vitest/node';

let fault;
const vitest = await createVitest(
  'test',
  { watch: false, pool: 'forks', maxWorkers: 1, bail: 1, reporters: [{}] },
  { plugins: [{ name: 'fault', enforce: 'pre', load: (id) => (id === fault?.file ? fault.text : undefined) }] },
);
await vitest.globTestSpecifications();

process.on('message', async ({ file, text, test }) => {
  fault = { file, text };
  const from = performance.now();
  if (file) vitest.invalidateFile(file);
  // What failed before counts for `bail`, and would end this run before it has begun.
  vitest.state.idMap.clear();
  vitest.state.filesMap.clear();
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(vitest.getModuleSpecifications(test));
  if (file) vitest.invalidateFile(file);
  const states = testModules.map((each) => each.state());
  const failed = states.includes('failed') || unhandledErrors.length > 0;
  // Neither failed nor passed says nothing, and must not be taken for either.
  const wrong = !failed && !states.every((state) => state === 'passed') && `${test} is ${states}`;
  process.send({ wrong, failed: failed && 'fails', ms: performance.now() - from });
});
process.send('ready');

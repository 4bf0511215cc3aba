import { run } from '../../src/cli/run.js';

/** What a command says and ends with, run within the test: quicker than the built program. */
export async function called(
  args: readonly string[],
  answers: { shift(): string | undefined } = [],
): Promise<{ code: number; out: string; err: string }> {
  const said = { out: [] as string[], err: [] as string[] };
  const code = await run(args, {
    out: (line) => said.out.push(line),
    err: (line) => said.err.push(line),
    isTerminal: false,
    stopped: () => Promise.resolve(),
    ask: () => Promise.resolve(answers.shift()),
  });
  return { code, out: said.out.join('\n'), err: said.err.join('\n') };
}

import words from '../../templates/command.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import { nearest } from '../job/mistake/nearest.js';
import { REFUSED, WELL, type Command, type Io } from './io.js';
import { say } from '../words/say.js';
import { USAGE } from './usage.js';
import { version } from './version.js';

/** Every command comes with what it needs only when it is called: the help is there at once. */
const COMMANDS: ReadonlyMap<string, () => Promise<Command>> = new Map([
  ['new', async () => (await import('./new.js')).newCommand],
  ['plan', async () => (await import('./plan.js')).planCommand],
  ['check', async () => (await import('./check.js')).checkCommand],
  ['papers', async () => (await import('./papers.js')).papersCommand],
  ['mesh', async () => (await import('./mesh.js')).meshCommand],
  ['steer', async () => (await import('./steer.js')).steerCommand],
  ['open', async () => (await import('./open.js')).openCommand],
  ['measured', async () => (await import('./measured.js')).measuredCommand],
  ['routed', async () => (await import('./routed.js')).routedCommand],
  ['track', async () => (await import('./track.js')).trackCommand],
]);

const HELP = `chamberwright plans the chambers of a chambered board, proves the walls, and prints everything at full size.

${Object.values(USAGE)
  .map((usage) => `  chamberwright ${usage}`)
  .join('\n\n')}

  chamberwright COMMAND --help   one command alone
  chamberwright --version

Every command ends with
  0   when all is well
  1   when there is something you must act on: a plan that does not stand, chambers that must shrink, a measure or a weighing that
      can hardly be right, a target that is not met
  2   when something was not understood or was not possible; then nothing was written`;

/** Runs what was typed after the program's name. Gives what it ends with. */
export async function run([name, ...args]: readonly string[], io: Io): Promise<number> {
  const asksHelp = [name, ...args].some((arg) => arg === '--help' || arg === '-h');
  const about = name === 'help' ? args[0] : name;
  if (asksHelp || name === 'help') {
    io.out(about !== undefined && Object.hasOwn(USAGE, about) ? usageOf(about as keyof typeof USAGE) : HELP);
    return WELL;
  }
  if (name === '--version' || name === '-V') {
    io.out(`chamberwright ${version()}`);
    return WELL;
  }
  const load = name === undefined ? undefined : COMMANDS.get(name);
  if (load) return (await load()).run(args, io);
  io.err(name === undefined ? HELP : sayFinding(unknown(name)));
  return REFUSED;
}

function usageOf(name: keyof typeof USAGE): string {
  return `chamberwright ${USAGE[name]}`;
}

function unknown(name: string): Finding {
  const commands = [...COMMANDS.keys()];
  const near = nearest(name, commands);
  const isJob = /\.(ya?ml|json)$/i.test(name);
  const meant = near ?? (isJob ? 'plan' : undefined);
  const { what, near: instead, oneOf } = words.unknown;
  return {
    where: name,
    what,
    remedy: meant
      ? say(instead, { meant: `${meant}${isJob ? ` ${name}` : ''}` })
      : say(oneOf, { commands: commands.join(', ') }),
  };
}

import { parseArgs, type ParseArgsConfig } from 'node:util';
import words from '../../templates/command.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { nearest } from '../job/mistake/nearest.js';
import { say } from '../words/say.js';

type Options = NonNullable<ParseArgsConfig['options']>;

const W = words.typed;

/** What was typed after a command's name; or why it was not understood. */
export function understood<const O extends Options>(args: readonly string[], options: O, operands: number) {
  const read = typed(args, options);
  if ('remedy' in read) return read;
  const { values, positionals } = read;
  if (positionals.length === operands) return { values, operands: positionals };
  const extra = positionals.slice(operands).join(' ');
  return extra === '' ? { where: W.where.file, ...W.missing } : { where: extra, ...W.many };
}

/** The same for a command with any number of words. */
export function typed<const O extends Options>(args: readonly string[], options: O) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    return notUnderstood(error as NodeJS.ErrnoException, options);
  }
}

function notUnderstood({ code, message }: NodeJS.ErrnoException, options: Options): Finding {
  // The name is said only in the parser's sentence: Unknown option '--jsno'.
  const [, name = ''] = /'(--?[^\s'=]*)/.exec(message) ?? [];
  const known = Object.keys(options).map((each) => `--${each}`);
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
    const near = nearest(name, known);
    const instead = known.length > 0 ? say(W.oneOf, { known: known.join(', ') }) : W.none;
    return { where: name, what: W.unknown, remedy: near ? say(W.near, { near }) : instead };
  }
  if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') {
    const option = known.find((each) => message.includes(each)) ?? name;
    const { what, remedy } = options[option.slice(2)]?.type === 'string' ? W.noValue : W.noneTaken;
    return { where: option, what, remedy: say(remedy, { option }) };
  }
  return { where: name, what: message, remedy: W.asShown };
}

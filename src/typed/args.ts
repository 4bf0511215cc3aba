import { parseArgs, type ParseArgsConfig } from 'node:util';
import { nearest } from '../job/mistake/nearest.js';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What was typed after a command's name; or, in words, why it was not understood. */
export function understood<const O extends Options>(args: readonly string[], options: O, operands: number) {
  const read = typed(args, options);
  if ('why' in read) return read;
  if (read.positionals.length === operands) return { values: read.values, operands: read.positionals };
  const many = read.positionals.length > operands;
  return {
    why: many ? `One file too many: ${read.positionals.slice(operands).join(' ')}` : 'The name of the file is missing.',
  };
}

/** The same for a command with any number of words. */
export function typed<const O extends Options>(args: readonly string[], options: O) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    return { why: whyNot(error as NodeJS.ErrnoException, options) };
  }
}

function whyNot({ code, message }: NodeJS.ErrnoException, options: Options): string {
  // The name is said only in the parser's sentence: Unknown option '--jsno'.
  const [, name = ''] = /'(--?[^\s'=]*)/.exec(message) ?? [];
  const known = Object.keys(options).map((each) => `--${each}`);
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
    const near = nearest(name, known);
    const instead = near
      ? `did you mean ${near}?`
      : known.length > 0
        ? `one of ${known.join(', ')}`
        : 'this command takes none';
    return `There is no option ${name} → ${instead}`;
  }
  if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') {
    const long = known.find((each) => message.includes(each)) ?? name;
    const takes = options[long.slice(2)]?.type === 'string';
    return takes ? `${long}: a value is missing → ${long}=VALUE` : `${long} takes no value → ${long} alone`;
  }
  return message;
}

import { parseArgs, type ParseArgsConfig } from 'node:util';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What was typed after a command's name; or, in words, why it was not understood. */
export function understood<const O extends Options>(args: readonly string[], options: O, operands: number) {
  try {
    const read = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
    if (read.positionals.length === operands) return { values: read.values, operands: read.positionals };
    const many = read.positionals.length > operands;
    return {
      why: many
        ? `One file too many: ${read.positionals.slice(operands).join(' ')}`
        : 'The name of the file is missing.',
    };
  } catch (error) {
    return { why: (error as Error).message };
  }
}

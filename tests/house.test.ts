import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const SRC = join(import.meta.dirname, '..', 'src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));

/** The files of `src` that a file imports, those of types too; found by TypeScript's own reader of imports. */
function importsOf(file: string): string[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(join(SRC, file), 'utf8'));
  return importedFiles
    .filter(({ fileName }) => fileName.startsWith('.'))
    .map(({ fileName }) => relative(SRC, join(SRC, dirname(file), fileName)).replace(/\.js$/, ''))
    .flatMap((target) => files.filter((other) => other.replace(/\.tsx?$/, '') === target));
}

const imports = new Map(files.map((file) => [file, importsOf(file)]));

/** What can be reached from a file over any number of arrows. */
function reached(from: string, arrows: ReadonlyMap<string, Iterable<string>>): Set<string> {
  const seen = new Set<string>();
  const waiting = [from];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    for (const next of arrows.get(at) ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      waiting.push(next);
    }
  }
  return seen;
}

describe('the house', () => {
  it('has imports at all', () => {
    expect(imports.get('plan.ts')).toContain('board/board.ts');
  });

  it('has no circle of files', () => {
    expect(files.filter((file) => reached(file, imports).has(file))).toEqual([]);
  });

  it.each([
    ['folders', (file: string) => dirname(file)],
    ['rooms', (file: string) => file.split('/')[0] ?? file],
  ])('has no two %s that import each other', (_, within) => {
    const arrows = new Map<string, Set<string>>();
    for (const [file, targets] of imports) {
      for (const target of targets) {
        if (within(target) === within(file)) continue;
        arrows.set(within(file), (arrows.get(within(file)) ?? new Set()).add(within(target)));
      }
    }
    const mutual = [...arrows].flatMap(([from, to]) =>
      [...to].filter((other) => from < other && arrows.get(other)?.has(from)).map((other) => `${from} and ${other}`),
    );
    expect(mutual).toEqual([]);
  });

  it('has no folder of more than 30 files', () => {
    const full = [...new Set(files.map((file) => dirname(file)))].filter(
      (folder) => files.filter((file) => dirname(file) === folder).length > 30,
    );
    expect(full).toEqual([]);
  });
});

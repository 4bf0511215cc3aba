import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/**
 * The pages the local server serves, each built into a folder of its own: `vite build --mode shop` gives
 * `dist/page/shop`.
 */
const PAGES: Readonly<Record<string, string>> = {
  shop: 'src/shop/page',
  bench: 'src/bench',
};

export default defineConfig(({ mode }) => {
  const folder = PAGES[mode];
  if (folder === undefined) throw new Error(`Which page? vite build --mode ${Object.keys(PAGES).join(' | ')}`);
  const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  return {
    root: here(folder),
    base: './',
    build: { outDir: here(`dist/page/${mode}`), emptyOutDir: true, target: 'es2022' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  };
});

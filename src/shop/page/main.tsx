import { render } from 'preact';
import { App } from './app.js';
import { openMemory } from './link/memory.js';
import { ShopOnPage } from './link/shopOnPage.js';

/**
 * A key or a code behind the `#` is taken out of the address at once, so that it is not kept in the browser's history.
 */
function takeFromAddress(name: 'token' | 'code'): string | undefined {
  const start = `#${name}=`;
  if (!location.hash.startsWith(start)) return undefined;
  const value = decodeURIComponent(location.hash.slice(start.length));
  history.replaceState(null, '', location.pathname);
  return value;
}

const code = takeFromAddress('code');
const token = takeFromAddress('token');
const shop = new ShopOnPage(await openMemory());
render(<App shop={shop} />, document.getElementById('page')!);
await shop.start(token);
if (code !== undefined) {
  const refused = shop.key === '' || shop.shown.link === 'shut-out' ? await shop.letIn(code) : undefined;
  if (refused !== undefined) alertPage(refused);
}

function alertPage(words: string): void {
  const note = document.createElement('p');
  note.className = 'trouble';
  note.setAttribute('role', 'alert');
  note.textContent = words;
  document.body.prepend(note);
}

import type { Shown } from './link/shopOnPage.js';

/** Whether what is pressed here arrives. Always in view. */
export function LinkLine({ link, unsent }: Pick<Shown, 'link' | 'unsent'>) {
  return (
    <p role="status" class={isFine({ link, unsent }) ? 'link' : 'link waiting'}>
      {link === 'live' ? 'Connected' : 'No connection'}
      {unsent.length > 0 && <>: {unsent.length} unsent, kept on this phone</>}
      {unsent.length === 0 && link !== 'live' && <>: go on, it is kept on this phone</>}
    </p>
  );
}

/** Connected, with everything sent. */
export function isFine({ link, unsent }: Pick<Shown, 'link' | 'unsent'>): boolean {
  return link === 'live' && unsent.length === 0;
}

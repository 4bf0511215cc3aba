import type { ViewOf } from './viewOf.js';
import { useState } from 'preact/hooks';
import type { TrackedBlock } from '../log/trackedBlock.js';
import { canScan, ScanLabel } from './scanLabel.js';

/** Finds a block by its number: typed with or without the dash, or read from its label where the browser allows it. */
export function FindBlock({ whole, open }: ViewOf) {
  const [typed, setTyped] = useState('');
  const [missed, setMissed] = useState<string>();
  const [scanning, setScanning] = useState(false);
  const find = (text: string) => {
    const block = blockMeant(text, whole.blocks);
    setMissed(block ? undefined : text);
    if (!block) return;
    setTyped('');
    open(block.id);
  };
  return (
    <search>
      <form
        class="find"
        onSubmit={(event) => {
          event.preventDefault();
          if (typed.trim() !== '') find(typed);
        }}
      >
        <label>
          Number
          <input
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
            placeholder={whole.blocks[0]?.id ?? ''}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            enterkeyhint="search"
          />
        </label>
        <button type="submit">Find</button>
        {canScan() && (
          <button type="button" onClick={() => setScanning(true)}>
            Scan
          </button>
        )}
      </form>
      <p role="status" class={missed === undefined ? 'nothing' : 'trouble'}>
        {missed === undefined ? '' : `No block ${missed}. Numbers look like ${whole.blocks[0]?.id ?? 'R2-07'}.`}
      </p>
      {scanning && (
        <ScanLabel
          read={(text) => {
            setScanning(false);
            if (text !== undefined) find(text);
          }}
        />
      )}
    </search>
  );
}

/**
 * The block somebody means by `r2 7`, `R2-07`, `R207`, or by what the code on a label says: an address, or a line
 * `block R2-07`.
 */
export function blockMeant(text: string, blocks: readonly TrackedBlock[]): TrackedBlock | undefined {
  const wanted = (/#block=([^&]+)$|^block (\S+)$/m.exec(text)?.slice(1).find(Boolean) ?? text).trim();
  const plain = (id: string) => id.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const loose = (id: string) => id.toUpperCase().replace(/[^A-Z0-9]+0*/g, '-');
  return blocks.find(({ id }) => plain(id) === plain(wanted)) ?? blocks.find(({ id }) => loose(id) === loose(wanted));
}

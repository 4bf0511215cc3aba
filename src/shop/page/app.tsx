import type { ViewOf } from './viewOf.js';
import { useEffect, useState } from 'preact/hooks';
import type { WholeShop } from '../report/wholeShop.js';
import type { ShopState } from '../log/state.js';
import { BlockCard } from './blockCard.js';
import { BlockList } from './blockList.js';
import { blockMeant } from './findBlock.js';
import { Gluing } from './gluing.js';
import { addressedBlock } from './link/addressedBlock.js';
import { LastThings } from './lastThings.js';
import { LinkLine } from './linkLine.js';
import { More } from './more.js';
import type { Shown, ShopOnPage } from './link/shopOnPage.js';
import { TopBar } from './topBar.js';
import { UndoBar } from './undoBar.js';
import { Welcome } from './welcome.js';

const VIEWS = ['Blocks', 'Gluing', 'Last', 'More'] as const;
type View = (typeof VIEWS)[number];

/** The whole page. */
export function App({ shop }: { readonly shop: ShopOnPage }) {
  const shown = useShown(shop);
  const [view, setView] = useState<View>('Blocks');
  const [todo, setTodo] = useState('all');
  const [block, open] = useAddressedBlock();
  const { whole, state } = shown;
  if (shown.link === 'shut-out') return <Welcome shop={shop} shown={shown} />;
  if (!whole || !state) {
    return (
      <main class="waiting">
        <h1>Fill blocks</h1>
        <p role="status">
          {shown.trouble ?? (shown.link === 'lost' ? 'No connection. Trying again …' : 'Reading the list …')}
        </p>
      </main>
    );
  }
  const turnTo = (name: View) => {
    setView(name);
    scrollTo(0, 0);
  };
  const of: ViewOf = { shop, shown, whole, state, open };
  return (
    <>
      <TopBar
        {...of}
        showChanged={() => {
          setTodo('changed');
          turnTo('Blocks');
        }}
      />
      <nav aria-label="Views">
        {VIEWS.map((name) => (
          <button
            key={name}
            type="button"
            aria-current={view === name ? 'page' : undefined}
            onClick={() => turnTo(name)}
          >
            {name}
          </button>
        ))}
        <LinkLine {...shown} />
      </nav>
      <main>
        {view === 'Blocks' && <BlockList {...of} todo={todo} setTodo={setTodo} />}
        {view === 'Gluing' && <Gluing {...of} />}
        {view === 'Last' && <LastThings {...of} />}
        {view === 'More' && <More {...of} />}
      </main>
      <UndoBar {...of} />
      {block !== undefined && (
        <BlockCard key={block} {...of} id={idMeant(block, whole, state)} close={() => open('')} />
      )}
    </>
  );
}

function useShown(shop: ShopOnPage): Shown {
  const [shown, setShown] = useState(shop.shown);
  useEffect(() => shop.watch(() => setShown(shop.shown)), [shop]);
  return shown;
}

/** The block whose number stands in the address, as a scanned label opens it: `#block=R2-07`. */
function useAddressedBlock(): readonly [string | undefined, (block: string) => void] {
  const read = () => addressedBlock(location.hash);
  const [block, setBlock] = useState(read());
  useEffect(() => {
    const changed = () => setBlock(read());
    addEventListener('hashchange', changed);
    return () => removeEventListener('hashchange', changed);
  }, []);
  return [
    block,
    (id) => {
      if (id === '') {
        history.replaceState(null, '', location.pathname);
        setBlock(undefined);
      } else location.hash = `block=${encodeURIComponent(id)}`;
    },
  ];
}

/** An address says a number as somebody typed it; what was once in the plan is meant by its number as it was. */
function idMeant(typed: string, { blocks }: WholeShop, state: ShopState): string {
  return state.blocks.has(typed) ? typed : (blockMeant(typed, blocks)?.id ?? typed);
}

import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { sayInLines } from '../../finding/say.js';
import type { Problem } from '../store/problem.js';
import type { Misfit } from '../fit/refit.js';
import { refitsOf } from '../fit/refits.js';
import { StoreTrouble, type Done, type ShopStore } from '../store/shopStore.js';
import type { TrackedBlock } from '../log/trackedBlock.js';
import { Changes } from './changes.js';
import { startLocalServer, type LocalServer } from '../../serve/localServer.js';
import { OneTimeCode } from './oneTimeCode.js';
import { folderRoute, redirectRoute } from '../../serve/pageRoutes.js';
import type { Role, Route } from '../../serve/route.js';
import { codeLink, paceOfShop, shopRoutes, tellNews, type Shop } from './shopRoutes.js';

export interface ShopServerOptions {
  readonly store: ShopStore;
  readonly job: string;
  readonly units: 'mm' | 'in';
  readonly blocks: readonly TrackedBlock[];
  /** The folder with the built page. */
  readonly pageFolder: string;
  /** This machine's address in the network, to let phones in; absent for this machine only. */
  readonly share?: string;
  /** The port to try first; where it is absent, the one the phones know, or else {@link USUAL_PORT}. */
  readonly port?: number;
  /** More to serve beside the tracker: the plan's page, the opened folder. */
  readonly routes?: readonly Route[];
  /** Told each time there is another code to show, with the link that holds it. */
  readonly codeChanged?: (link: string) => void;
  readonly failed: (error: unknown) => void;
}

export interface ShopServer {
  /** The builder's own way in, with his token. To be shown to nobody else. */
  readonly ownerLink: string;
  /** The phones' way in, with the code, where the tracker is shared. */
  readonly phoneLink: () => string | undefined;
  /** What the builder must be told about addresses. */
  readonly notices: readonly string[];
  readonly port: number;
  /** Puts another plan in force and tells every page. */
  readonly replacePlan: (
    job: string,
    blocks: readonly TrackedBlock[],
    units: 'mm' | 'in',
  ) => Promise<Done<{ readonly isNew: boolean; readonly refits: ReadonlyMap<string, Misfit> }>>;
  readonly close: () => Promise<void>;
}

/** Tried first where no port is remembered: a phone finds its unsent ticks only under the same address and port. */
export const USUAL_PORT = 4718;
/** How often another program's entries are looked for, and how often the phones hear a sign of life, ms. */
const LOOK_EVERY = 400;
const BEAT_EVERY = 5000;

/**
 * Starts the tracker's server for an open store. The store stays open when it closes.
 *
 * @throws the system's error where an address is not this machine's, or not even a free port can be had
 */
export async function startShopServer(options: ShopServerOptions): Promise<ShopServer | { readonly problem: Problem }> {
  const { store, share } = options;
  const recorded = await store.recordPlan(options.job, options.blocks, Date.now());
  if (!recorded.ok) return { problem: recorded.problem };
  let plan = { job: options.job, units: options.units, plan: recorded.value.number, blocks: options.blocks };
  const ownerToken = randomBytes(32).toString('base64url');
  const changes = new Changes();
  let shareAddress: string | undefined;
  const code = new OneTimeCode(() => {
    if (shareAddress !== undefined) options.codeChanged?.(codeLink(shareAddress, code));
  });
  const shop: Shop = { store, changes, code, plan: () => plan, shareAddress: () => shareAddress };
  const { server, notices } = await startSomewhere(options, {
    routes: [
      ...shopRoutes(shop),
      folderRoute('/shop/', options.pageFolder),
      redirectRoute('/', '/shop/'),
      redirectRoute('/shop', '/shop/'),
      ...(options.routes ?? []),
    ],
    addresses: share === undefined ? ['127.0.0.1'] : ['127.0.0.1', share],
    roleOf: (token, request) => roleOf(token, request, ownerToken, store),
    failed: options.failed,
    troubleIn: (error) => (error instanceof StoreTrouble ? sayInLines(error.problem) : undefined),
  });
  if (share !== undefined) {
    shareAddress = `http://${share}:${server.port}/shop/`;
    notices.push(...(await rememberAddress(store, shareAddress)));
  }
  const look = guarded(async () => {
    code.renewIfOld(Date.now());
    await changes.dropShutOut();
    await tellNews(shop);
  }, options.failed);
  store.whenChanged(look);
  const looking = setInterval(look, LOOK_EVERY);
  const beating = setInterval(
    guarded(() => changes.beat(() => paceOfShop(store)), options.failed),
    BEAT_EVERY,
  );
  return {
    ownerLink: `http://127.0.0.1:${server.port}/shop/#token=${ownerToken}`,
    phoneLink: () => (shareAddress === undefined ? undefined : codeLink(shareAddress, code)),
    notices,
    port: server.port,
    replacePlan: async (job, blocks, units) => {
      const done = await store.recordPlan(job, blocks, Date.now());
      if (!done.ok) return done;
      const isNew = done.value.number !== plan.plan || units !== plan.units;
      plan = { job, units, blocks, plan: done.value.number };
      if (isNew) changes.announceReload();
      await tellNews(shop);
      return { ok: true, value: { isNew, refits: refitsOf(blocks, store.state, await store.plans()) } };
    },
    close: async () => {
      clearInterval(looking);
      clearInterval(beating);
      changes.close();
      await server.close();
    },
  };
}

/** The owner's token counts only on this machine; a phone's wherever it may connect. */
async function roleOf(token: string, request: IncomingMessage, ownerToken: string, store: ShopStore): Promise<Role> {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  if (request.socket.localAddress === '127.0.0.1' && timingSafeEqual(digest(token), digest(ownerToken))) return 'owner';
  return (await store.isSession(token, Date.now())) ? 'phone' : 'nobody';
}

async function startSomewhere(
  { store, port }: ShopServerOptions,
  server: Omit<Parameters<typeof startLocalServer>[0], 'port'>,
): Promise<{ server: LocalServer; notices: string[] }> {
  const known = await store.setting('port');
  const first = port ?? (known === undefined ? USUAL_PORT : Number(known));
  try {
    const started = await startLocalServer({ ...server, port: first });
    await store.setSetting('port', String(started.port));
    return { server: started, notices: [] };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    const notice =
      `Port ${first} is taken, perhaps by this tracker in another window, so another port is used this time. ` +
      'Ticks that a phone could not send yet wait in the page at the usual address.';
    return { server: await startLocalServer({ ...server, port: 0 }), notices: [notice] };
  }
}

async function rememberAddress(store: ShopStore, address: string): Promise<readonly string[]> {
  const before = await store.setting('address');
  await store.setSetting('address', address);
  if (before === undefined || before === address) return [];
  return [
    `The phones knew this tracker as ${before}; it is now ${address}, and they must be let in again. ` +
      'Ticks that a phone could not send yet wait in the page at the old address: to get them, give this machine its old address back.',
  ];
}

/** Does something now and then, one at a time; what goes wrong is told once, not each time anew. */
function guarded(action: () => Promise<void>, failed: (error: unknown) => void): () => void {
  let said = '';
  let busy = false;
  return () => {
    if (busy) return;
    busy = true;
    action()
      .then(() => (said = ''))
      .catch((error: unknown) => {
        const message = String(error);
        if (message !== said) failed(error);
        said = message;
      })
      .finally(() => (busy = false));
  };
}

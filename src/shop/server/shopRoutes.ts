import QRCode from 'qrcode';
import { randomBytes } from 'node:crypto';
import { admitted, type Refused } from '../log/door.js';
import { codeSchema, deliverySchema, photoSchema } from '../log/eventSchema.js';
import { writeList } from '../list/listCsv.js';
import { paceOf, type Pace } from '../report/pace.js';
import { refitsOf } from '../fit/refits.js';
import type { Delivery } from '../store/delivered.js';
import { photoTypeOf } from '../store/photo.js';
import { sayInLines } from '../../finding/say.js';
import type { Problem } from '../store/problem.js';
import type { ShopStore } from '../store/shopStore.js';
import { toldShop, type WholeShop } from '../report/wholeShop.js';
import { refuse, send, sendJson } from '../../serve/answer.js';
import type { Changes } from './changes.js';
import { readJson } from '../../serve/jsonBody.js';
import { CODE_LASTS, type OneTimeCode } from './oneTimeCode.js';
import { EVERYBODY, LET_IN, OWNER, type Route } from '../../serve/route.js';

/** What the tracker's routes work on. */
export interface Shop {
  readonly store: ShopStore;
  readonly changes: Changes;
  readonly code: OneTimeCode;
  /** The plan in force; replaced as a whole when the job changes. */
  readonly plan: () => Pick<WholeShop, 'job' | 'units' | 'plan' | 'blocks'>;
  /** The address phones reach the page at, where they may. */
  readonly shareAddress: () => string | undefined;
}

/**
 * What became of each event of a delivery; `refused` ones were not understood and will not be, however often they are
 * sent.
 */
export type Outcome = Delivery | Refused;

/**
 * Longest bodies taken, bytes: a full delivery of long notes; a photo as a phone's page sends it, made smaller and in
 * base64.
 */
const MOST_DELIVERY = 1_000_000;
const MOST_PHOTO = 8_000_000;
const MOST_CODE = 1_000;
/** The pace is taken from this many last events. */
const PACE_OVER = 2000;

/** The routes of the tracker. */
export function shopRoutes(shop: Shop): readonly Route[] {
  return [
    {
      method: 'GET',
      path: '/api/shop',
      allowed: LET_IN,
      answer: async ({ role }, response) =>
        sendJson(response, 200, toldShop(await wholeShop(shop, role === 'owner' ? 'owner' : 'phone'))),
    },
    {
      method: 'GET',
      path: '/api/changes',
      allowed: LET_IN,
      answer: async ({ query, role, token }, response) => {
        const after = Number(query.get('after') ?? '0');
        if (!Number.isSafeInteger(after) || after < 0) return refuse(response, 400, 'after: a whole number.');
        await tellNews(shop);
        const isLetIn = async () => role === 'owner' || shop.store.isSession(token, Date.now());
        shop.changes.listen(response, await shop.store.eventsAfter(after), isLetIn);
      },
    },
    {
      method: 'POST',
      path: '/api/events',
      allowed: LET_IN,
      answer: (asked, response) => takeEvents(shop, asked, response),
    },
    {
      method: 'POST',
      path: '/api/photos',
      allowed: LET_IN,
      answer: (asked, response) => takePhoto(shop, asked, response),
    },
    {
      method: 'GET',
      path: '/api/photos/*',
      allowed: LET_IN,
      answer: async ({ rest }, response) => {
        const photo = /^[0-9a-f]{64}$/.test(rest) ? await shop.store.photo(rest) : undefined;
        if (!photo) return refuse(response, 404, 'There is no such photo.');
        send(response, 200, photo.type, photo.bytes, { 'Cache-Control': 'private, max-age=31536000, immutable' });
      },
    },
    {
      method: 'GET',
      path: '/api/list.csv',
      allowed: LET_IN,
      answer: async (_, response) => {
        const { job, blocks, units } = shop.plan();
        const list = writeList(
          { job, blocks, units, plans: await shop.store.plans(), state: shop.store.state },
          Date.now(),
        );
        send(response, 200, 'text/csv; charset=utf-8', Buffer.from(list), {
          'Content-Disposition': 'attachment; filename="tracking-list.csv"',
        });
      },
    },
    { method: 'GET', path: '/api/code', allowed: OWNER, answer: (_, response) => showCode(shop, response) },
    {
      method: 'POST',
      path: '/api/session',
      allowed: EVERYBODY,
      answer: (asked, response) => letIn(shop, asked, response),
    },
  ];
}

/** Takes in what other programs recorded and tells the phones. */
export async function tellNews({ store, changes }: Shop): Promise<void> {
  changes.announce(await store.refresh());
}

/** The pace of the work, from the last events. */
export async function paceOfShop(store: ShopStore): Promise<Pace> {
  return paceOf(await store.eventsAfter(Math.max(0, store.state.last - PACE_OVER)));
}

async function wholeShop(shop: Shop, role: 'owner' | 'phone'): Promise<WholeShop> {
  await tellNews(shop);
  const { store } = shop;
  const plans = await store.plans();
  const plan = shop.plan();
  return {
    ...plan,
    state: store.state,
    refits: refitsOf(plan.blocks, store.state, plans),
    pace: await paceOfShop(store),
    now: Date.now(),
    role,
    shared: shop.shareAddress() !== undefined,
  };
}

const takeEvents: Handler = async (shop, { request }, response) => {
  const body = await readJson(request, MOST_DELIVERY);
  if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
  const delivery = deliverySchema.safeParse(body.value);
  if (!delivery.success) return refuse(response, 400, 'A delivery is { sentAt, events: [at most 200] }.');
  const { good, refused } = admitted(delivery.data.events, await shop.store.places());
  const done = await shop.store.append(good, delivery.data.sentAt, Date.now());
  if (!done.ok) return refuseForProblem(response, done.problem);
  sendJson(response, 200, { outcomes: [...done.value, ...refused], now: Date.now() });
  await tellNews(shop);
};

const takePhoto: Handler = async (shop, { request }, response) => {
  const body = await readJson(request, MOST_PHOTO);
  if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
  const read = photoSchema.safeParse(body.value);
  if (!read.success) return refuse(response, 400, 'A photo is { base64 }.');
  const bytes = Buffer.from(read.data.base64, 'base64');
  const type = photoTypeOf(bytes);
  if (!type) return refuse(response, 400, 'A photo is a JPEG, PNG or WebP picture.');
  const done = await shop.store.addPhoto({ type, bytes }, Date.now());
  if (!done.ok) return refuseForProblem(response, done.problem);
  sendJson(response, 200, { photo: done.value });
};

async function showCode({ code, shareAddress }: Shop, response: Parameters<Route['answer']>[1]): Promise<void> {
  const address = shareAddress();
  if (address === undefined) return refuse(response, 409, 'The tracker is not shared. Start it with --share.');
  const link = codeLink(address, code);
  const svg = await QRCode.toString(link, { type: 'svg', margin: 2 });
  sendJson(response, 200, { address, code: code.shown, minutes: CODE_LASTS, svg });
}

/** The address that lets a phone in. The code stands behind the `#`: browsers keep that part to themselves. */
export function codeLink(address: string, code: OneTimeCode): string {
  return `${address}#code=${code.shown}`;
}

const letIn: Handler = async (shop, { request, from }, response) => {
  const body = await readJson(request, MOST_CODE);
  if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
  const read = codeSchema.safeParse(body.value);
  if (!read.success) return refuse(response, 400, 'A try is { code }.');
  if (shop.shareAddress() === undefined)
    return refuse(response, 403, 'The tracker is not shared. Start it with --share.');
  const tried = shop.code.try(read.data.code, from, Date.now());
  if (tried.kind === 'wait') {
    return refuse(response, 429, `Too many wrong codes. Try again in ${tried.seconds} s.`, {
      'Retry-After': String(tried.seconds),
    });
  }
  if (tried.kind === 'wrong')
    return refuse(response, 403, 'That is not the code on the screen. Each code lets in one phone.');
  const token = randomBytes(32).toString('base64url');
  const done = await shop.store.addSession(token, Date.now());
  if (!done.ok) return refuseForProblem(response, done.problem);
  sendJson(response, 200, { token });
};

type Handler = (shop: Shop, ...asked: Parameters<Route['answer']>) => Promise<void>;

/** 507 where the disk is full (RFC 4918, 11.5), 503 for what may pass, both with the whole message. */
function refuseForProblem(response: Parameters<Route['answer']>[1], problem: Problem): void {
  refuse(response, problem.kind === 'full' ? 507 : 503, sayInLines(problem));
}

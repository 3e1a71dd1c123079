// Delivers what waits in the outbox, oldest first. What the network or the server's own trouble stopped is tried
// again after a while; what the server refuses stays, with its reason. An item leaves the outbox only when the
// server has said that it has it.
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { isPassing, type ShareFault, waitBefore } from '../core/share-fault.js';
import { askServer, shownUrl } from './ask-server.js';
import { type Item, isWhole, type Outbox } from './outbox.js';
import { ShareError } from './share-error.js';

export interface DeliveryWish {
  readonly address: URL;
  readonly token: string | null;
  /** Tries for each item, at least 1. */
  readonly attempts: number;
  readonly pause: (seconds: number) => Promise<void>;
  readonly patienceS?: number;
}

export type Delivered = { readonly item: Item } & (
  | { readonly outcome: 'delivered' }
  /** It stays in the outbox. */
  | { readonly outcome: 'kept'; readonly found: ShareFault }
);

/** Yields each item as it is done; ends early where nothing more can get through. */
export async function* deliver(
  outbox: Outbox,
  wish: DeliveryWish,
): AsyncGenerator<Delivered, void> {
  for (const item of outbox.items()) {
    const found = await deliverOne(outbox, item, wish);
    yield found === null ? { item, outcome: 'delivered' } : { item, outcome: 'kept', found };
    if (found !== null && stopsAll(found)) return;
  }
}

/** A server that cannot be reached or does not know us answers the next item no better. */
const stopsAll = (found: ShareFault): boolean =>
  isPassing(found) ||
  found.fault === 'sent-elsewhere' ||
  found.fault === 'token-in-clear' ||
  (found.fault === 'answered' && (found.status === 401 || found.status === 403));

const deliverOne = async (
  outbox: Outbox,
  item: Item,
  wish: DeliveryWish,
): Promise<ShareFault | null> => {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await put(outbox, item, wish);
      outbox.remove(item);
      return null;
    } catch (error) {
      if (!(error instanceof ShareError)) throw error;
      const { found, retryAfterS } = error;
      outbox.note({ ...item, attempts: item.attempts + attempt, last: found.fault });
      if (!isPassing(found) || attempt >= wish.attempts) return found;
      await wish.pause(waitBefore(attempt, retryAfterS));
    }
  }
};

const usualPatienceS = 30;
/** Slower than this a connection is as good as dead. Bytes a second. */
const slowest = 50_000;
const mostAnswerBytes = 64 * 1024;

const put = async (outbox: Outbox, item: Item, wish: DeliveryWish): Promise<void> => {
  const { address, token, patienceS = usualPatienceS } = wish;
  const path = outbox.bytesPath(item);
  const url = new URL(address);
  url.pathname = `${url.pathname.replace(/\/$/u, '')}/${item.path}`;
  if (!(await isWhole(path, item))) {
    throw new ShareError({ fault: 'changed-on-disk', at: shownUrl(url) });
  }
  await askServer({
    ...{ url, method: 'PUT', token, mostBytes: mostAnswerBytes },
    patienceS: patienceS + item.bytes / slowest,
    headers: {
      'content-type': item.mediaType,
      'content-length': String(item.bytes),
      // RFC 9530: the server can tell whether everything arrived as it was sent.
      'content-digest': `sha-256=:${Buffer.from(item.sha256, 'hex').toString('base64')}:`,
      'idempotency-key': item.sha256,
    },
    body: () => Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>,
  });
};

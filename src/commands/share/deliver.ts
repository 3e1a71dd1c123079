// `share deliver` and `share outbox`: sessions and reports to the shop, through an outbox that outlives the program.
import { setTimeout as sleep } from 'node:timers/promises';
import { Command } from 'commander';
import { cleanText } from '../../core/clean-text.js';
import { shortFingerprint } from '../../core/session-chain.js';
import { english } from '../../core/words/english.js';
import { deliver } from '../../share/deliver.js';
import { type Outbox, openOutbox } from '../../share/outbox.js';
import { outboxFolder } from '../../store/session-paths.js';
import { configuration } from '../configuration.js';
import { complain, type Say, type SayOptions, sayer } from '../say.js';
import { exitCodes } from '../user-error.js';
import { type Server, serverFor } from './address.js';
import { queueFiles } from './queue-files.js';

interface DeliverOptions extends SayOptions {
  readonly to?: string;
  readonly withCustomerData?: boolean;
}

interface OutboxOptions extends SayOptions {
  readonly to?: string;
  readonly retry?: boolean;
}

const deliverExamples = `
Examples:
  pinwalk share deliver session.jsonl
      ticket, device, symptom, history, notes, photos and names are taken out
  pinwalk share deliver session.jsonl handover.html --with-customer-data
  pinwalk share deliver session.jsonl --to https://shop.example/inbox/

The token for the server comes from the environment variable PINWALK_TOKEN, or
from the file that "tokenFile" in the configuration names. What could not be
delivered stays in the outbox.`;

const outboxExamples = `
Examples:
  pinwalk share outbox
  pinwalk share outbox --retry`;

const words = english.share;

/** Tries for each file in one run: over a quarter of a minute where the server never answers at once. */
const attempts = 4;

export const deliverCommand = (): Command =>
  new Command('deliver')
    .description('deliver a session, and reports of it, to the shop')
    .argument('<session>', 'a saved session')
    .argument('[reports...]', 'reports made from it')
    .option('--to <url>', "the shop's address for deliveries (default: from the configuration)")
    .option('--with-customer-data', "send the customer's data too")
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', deliverExamples)
    .action(async (session: string, reports: readonly string[], options: DeliverOptions) => {
      const say = sayer(options);
      const server = serverFor('delivery', options.to);
      const outbox = openOutbox(outboxFolder());
      const withCustomerData = options.withCustomerData ?? false;
      const wish = { session, reports, withCustomerData, now: new Date() };
      for (const { path, sha256, bytes } of await queueFiles(outbox, wish)) {
        const object = { type: 'delivery-queued', path, sha256, bytes, withCustomerData };
        say(words.queued(shown(path), withCustomerData), object);
      }
      await sendAll(outbox, server, say, options.to);
    });

export const outboxCommand = (): Command =>
  new Command('outbox')
    .description('list what waits to be delivered, or try again')
    .option('--retry', 'try to deliver everything that waits')
    .option('--to <url>', "the shop's address for deliveries (default: from the configuration)")
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', outboxExamples)
    .action(async (options: OutboxOptions) => {
      const say = sayer(options);
      const outbox = openOutbox(outboxFolder());
      if (!options.retry) list(outbox, options, say);
      else if (outbox.items().length > 0) {
        await sendAll(outbox, serverFor('delivery', options.to), say, options.to);
      } else say(words.nothingWaits, { type: 'outbox-tried', delivered: 0, waiting: 0 });
    });

/** `session.jsonl e8a6 c792 aa64 f998`: the file's name, and the fingerprint as `check` shows it. */
const shown = (path: string): string => {
  const [fingerprint = '', name = ''] = path.split('/');
  return `${name} ${shortFingerprint(fingerprint)}`;
};

const sendAll = async (
  outbox: Outbox,
  server: Server,
  say: Say,
  to: string | undefined,
): Promise<void> => {
  let delivered = 0;
  const pause = (seconds: number): Promise<void> => sleep(seconds * 1000);
  for await (const done of deliver(outbox, { ...server, attempts, pause })) {
    const { path, sha256 } = done.item;
    if (done.outcome === 'delivered') {
      delivered += 1;
      say(words.delivered(shown(path)), { type: 'delivered', path, sha256 });
    } else {
      const says = words.fault(done.found);
      say(words.kept(shown(path), says), { type: 'delivery-kept', path, sha256, says });
    }
  }
  const waiting = outbox.items().length;
  say(words.deliveredAll(delivered, waiting), { type: 'outbox-tried', delivered, waiting });
  if (waiting === 0) return;
  complain(howToRetry(to));
  process.exitCode = exitCodes.noLink;
};

/** An address that was given for once is not kept, and has to be given again. */
const howToRetry = (to: string | undefined): string => {
  if (to !== undefined) return words.howToRetry(cleanText(to, 200));
  return words.howToRetry(configuration().delivery === undefined ? 'URL' : null);
};

const list = (outbox: Outbox, options: OutboxOptions, say: Say): void => {
  const items = outbox.items();
  for (const item of items) {
    const { path, bytes, attempts: tried, customerData } = item;
    say(words.waiting(shown(path), bytes, tried, customerData), {
      type: 'delivery-waiting',
      ...item,
    });
  }
  if (options.json === true) return;
  say(items.length === 0 ? words.nothingWaits : howToRetry(options.to), {});
};

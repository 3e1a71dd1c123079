// Puts a session and reports of it into the outbox, as they will be sent.
import { createHash } from 'node:crypto';
import {
  closeSync,
  createReadStream,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { extname } from 'node:path';
import { cleanText } from '../../core/clean-text.js';
import { english } from '../../core/words/english.js';
import type { Item, Outbox } from '../../share/outbox.js';
import { exitCodes, UserError } from '../user-error.js';
import { fingerprintOf, redactedLines } from './redacted-lines.js';

const words = english.share;

export interface QueueWish {
  readonly session: string;
  readonly reports: readonly string[];
  readonly withCustomerData: boolean;
  readonly now: Date;
}

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.md': 'text/markdown',
  '.csv': 'text/csv',
};

const mostReportBytes = 32 * 1024 * 1024;
const mostSessionBytes = 512 * 1024 * 1024;

/** @throws UserError, FileError: then nothing was queued. */
export const queueFiles = async (outbox: Outbox, wish: QueueWish): Promise<readonly Item[]> => {
  const { session, reports, withCustomerData, now } = wish;
  if ((statSync(session, { throwIfNoEntry: false })?.size ?? 0) > mostSessionBytes) {
    throw new UserError(words.tooLarge(shown(session), mostSessionBytes), exitCodes.badFile);
  }
  const draft = outbox.draftPath();
  try {
    const { fingerprint, bytes, sha256 } = await (withCustomerData ? copy : redact)(session, draft);
    const bodies = reports.map((file, at) => readReport(file, at, wish, fingerprint));
    const queued = {
      customerData: withCustomerData,
      queued: now.toISOString(),
      attempts: 0,
      last: null,
    };
    const format = 'pinwalk-outbox/1' as const;
    const whole: Item = {
      ...{ format, sha256, bytes, path: `${fingerprint}/session.jsonl` },
      ...{ mediaType: 'application/jsonl', ...queued },
    };
    renameSync(draft, outbox.bytesPath(whole));
    outbox.note(whole);
    const others = bodies.map(({ body, name, mediaType }): Item => {
      const item = { format, sha256: sha256Of(body), bytes: body.length, mediaType };
      return { ...item, path: `${fingerprint}/${name}`, ...queued };
    });
    others.forEach((item, at) => {
      outbox.keep(item, bodies[at]?.body ?? Buffer.alloc(0));
    });
    return [whole, ...others];
  } finally {
    rmSync(draft, { force: true });
  }
};

interface Draft {
  readonly fingerprint: string;
  readonly bytes: number;
  readonly sha256: string;
}

const redact = (session: string, draft: string): Promise<Draft> => {
  const fd = openSync(draft, 'w', 0o600);
  const hash = createHash('sha256');
  let [fingerprint, bytes] = ['', 0];
  try {
    for (const step of redactedLines(session)) {
      const line = Buffer.from(`${step.line}\n`);
      writeSync(fd, line);
      hash.update(line);
      bytes += line.length;
      fingerprint = step.fingerprint;
    }
  } finally {
    closeSync(fd);
  }
  return Promise.resolve({ fingerprint, bytes, sha256: hash.digest('hex') });
};

/** As it is, byte for byte. */
const copy = async (session: string, draft: string): Promise<Draft> => {
  const fingerprint = fingerprintOf(session);
  const fd = openSync(draft, 'w', 0o600);
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    for await (const chunk of createReadStream(session)) {
      writeSync(fd, chunk as Buffer);
      hash.update(chunk as Buffer);
      bytes += (chunk as Buffer).length;
    }
  } finally {
    closeSync(fd);
  }
  return { fingerprint, bytes, sha256: hash.digest('hex') };
};

/** A report tells the owner's matters, unless it was made from the session as it is sent: it names that one. */
const readReport = (
  file: string,
  at: number,
  { withCustomerData }: QueueWish,
  fingerprint: string,
): { readonly body: Buffer; readonly name: string; readonly mediaType: string } => {
  const ending = extname(file).toLowerCase();
  const mediaType = mediaTypes[ending];
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (mediaType === undefined || size === undefined) {
    throw new UserError(words.notAReport(shown(file)), exitCodes.badFile);
  }
  if (size > mostReportBytes) {
    throw new UserError(words.tooLarge(shown(file), mostReportBytes), exitCodes.badFile);
  }
  const body = readFileSync(file);
  if (!withCustomerData && !body.includes(fingerprint)) {
    throw new UserError(words.reportNamesCustomer(shown(file)), exitCodes.usage);
  }
  return { body, name: `report${at === 0 ? '' : `-${at + 1}`}${ending}`, mediaType };
};

const shown = (file: string): string => cleanText(file, 300);
const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

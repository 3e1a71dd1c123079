// A session without what is the customer's, as lines of a session file of its own: numbered and chained anew, its
// header saying of which session it is. The same session gives the same lines.
import { encodeEvent, firstSeq } from '../event-line.js';
import type { WalkEvent } from '../events.js';
import { type ChainStep, type ChainValue, chainStart, prevOf } from '../session-chain.js';
import { redactEvent } from './redact-event.js';

export interface RedactedLine {
  /** Without newline. */
  readonly line: string;
  /** The chain value after this line: the last one is the redacted session's fingerprint. */
  readonly fingerprint: ChainValue;
}

/**
 * @param of fingerprint of the whole session, 64 hex digits.
 * @param bytesOf UTF-8 of a line.
 */
export function* redactSession(
  events: Iterable<WalkEvent>,
  of: ChainValue,
  chainStep: ChainStep,
  bytesOf: (line: string) => Uint8Array,
): Generator<RedactedLine, void> {
  let seq = firstSeq;
  let fingerprint = chainStart;
  for (const event of events) {
    const redacted = redactEvent(plain(event));
    if (redacted === null) continue;
    const told = redacted.type === 'session-opened' ? { redacted: { of }, ...redacted } : redacted;
    const line = encodeEvent(seq, told, prevOf(fingerprint));
    fingerprint = chainStep(fingerprint, bytesOf(line));
    seq += 1;
    yield { line, fingerprint };
  }
}

const plain = (event: WalkEvent & { readonly seq?: number }): WalkEvent => {
  const { seq: _seq, ...rest } = event;
  return rest as WalkEvent;
};

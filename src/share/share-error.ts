// A fault between this program and a shop's server, to be put into words by whoever catches it.
import type { ShareFault } from '../core/share-fault.js';

export class ShareError extends Error {
  override readonly name = 'ShareError';
  constructor(
    readonly found: ShareFault,
    /** Seconds the server asks to be left alone. */
    readonly retryAfterS: number | null = null,
  ) {
    super(found.fault);
  }
}

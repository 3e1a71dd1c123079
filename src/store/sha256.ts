// SHA-256 by the platform's own implementation, in the shape the core asks for.
import { hash } from 'node:crypto';
import type { Sha256 } from '../core/session-chain.js';

export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');

/** 64 hex digits over a file's content as it lies on the disk. */
export const sha256Hex = (bytes: Uint8Array): string => hash('sha256', bytes, 'hex');

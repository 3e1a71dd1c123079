// What a handful of bytes says about which driver fits, in words. Pure. One lucky line of a talking meter is no
// evidence, and neither is a driver that misreads a line.
import { cleanText } from '../core/clean-text.js';
import { createFramer } from '../core/framing.js';
import type { Driver } from '../core/meter/driver-format.js';
import { parseErrorEntry } from '../core/meter/error-entry.js';
import { parseIdentity } from '../core/meter/identity.js';
import { driversForLines } from '../core/meter/propose-driver.js';
import { quoted } from '../core/problems.js';

/** The lines in `bytes`, cut and decoded as the driver says. */
const linesFor = ({ wire }: Driver, bytes: Uint8Array, dropFirstPartial: boolean): string[] => {
  const { maxFrame, encoding } = wire;
  return createFramer({ maxFrame, encoding, dropFirstPartial })
    .push(bytes)
    .map(({ text }) => text);
};

const leastLines = 2;

/** Why a driver of a meter that talks by itself fits what was heard; undefined where it does not. */
export const streamEvidence = (driver: Driver, bytes: Uint8Array): string | undefined => {
  const lines = linesFor(driver, bytes, true);
  if (lines.length < leastLines || driversForLines([driver], lines, 'stream').length === 0) return;
  return `it talks by itself, and all ${lines.length} lines heard are of this kind, such as ${quoted(lines.at(-1) ?? '')}`;
};

/** Why a driver that asks with a key fits the answer; undefined where it does not. */
export const keyEvidence = (driver: Driver, key: string, bytes: Uint8Array): string | undefined => {
  const lines = linesFor(driver, bytes, false).filter((line) => line !== key);
  if (driversForLines([driver], lines, 'key').length === 0) return;
  return `it answers the character ${quoted(key)} with ${quoted(lines[0] ?? '')}`;
};

/** The first line that has the form of an identity; cleaned. */
export const identityIn = (bytes: Uint8Array): string | undefined => {
  const framer = createFramer({ maxFrame: 400, encoding: 'latin1', dropFirstPartial: false });
  const line = framer
    .push(bytes)
    .map(({ text }) => text.trim())
    .find((text) => /\p{L}{2}/u.test(text) && !parseErrorEntry(text) && parseIdentity(text));
  return line === undefined ? undefined : cleanText(line, 120);
};

// A session file as long as a day at the bench: one simulated walk told again and again, sound from its first line
// to its last.
import { closeSync, openSync, writeSync } from 'node:fs';
import { encodeEvent } from '../../../src/core/event-line.js';
import type { WalkEvent } from '../../../src/core/events.js';
import type { Input } from '../../../src/core/inputs.js';
import { chainStart, prevOf } from '../../../src/core/session-chain.js';
import { beginWalk, decide } from '../../../src/core/walk/decide.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { chainStep } from '../../../src/store/chain-step.js';
import { openedWith, walkOnBench } from '../../bench/support/live-walk.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';

const writeAt = 4000;
/** Seconds between one walk's end and the next one's beginning. */
const restS = 1;

/** Writes a session with at least so many readings, at fifty a second. Returns the number of its events. */
export const writeLongSession = (path: string, readings: number): number => {
  const profile = shippedProfile('demo');
  const driver = shippedDriver('stream-fields-flags');
  const walk = walkOnBench({ driver, profile, bench: { rate: 50 } });
  const opened = openedWith(driver, profile);
  const fd = openSync(path, 'wx');
  let chain = chainStart;
  let seq = 0;
  let taken = 0;
  let lines: string[] = [];
  const flush = (): void => {
    writeSync(fd, lines.map((line) => `${line}\n`).join(''));
    lines = [];
  };
  const put = (event: WalkEvent): void => {
    const line = encodeEvent(seq, event, prevOf(chain));
    chain = chainStep(chain, Buffer.from(line));
    seq += 1;
    if (event.type === 'reading-taken') taken += 1;
    if (lines.push(line) >= writeAt) flush();
  };
  put(opened);
  let { state, events } = beginWalk(openWalk(opened));
  events.forEach(put);
  for (let fromS = 0; taken < readings; fromS += walk.tookS + restS) {
    if (fromS > 0) {
      const back: Input = { kind: 'act', t: fromS - restS / 2, act: { act: 'go-to', pin: '1' } };
      ({ state, events } = decide(state, back));
      events.forEach(put);
    }
    for (const input of walk.inputs) {
      ({ state, events } = decide(state, later(input, fromS)));
      events.forEach(put);
    }
  }
  flush();
  closeSync(fd);
  return seq;
};

const later = (input: Input, byS: number): Input =>
  input.kind === 'reading'
    ? { kind: 'reading', reading: { ...input.reading, t: input.reading.t + byS } }
    : { ...input, t: input.t + byS };

// What goes wrong on a wire, each as what a peer does from the fault's beginning to its end. A stream talks by itself;
// an instrument answers.
import { setTimeout as wait } from 'node:timers/promises';
import type { Random } from '../../benchmarks/shared/random.js';
import type { Peer } from './peers.js';

export interface Fault {
  readonly name: string;
  /** Ends when the fault does: from then on the meter is well. */
  run(peer: Peer, random: Random): Promise<void>;
  /** What the walk must say of it meanwhile, if anything: a `walk-held` or `walk-paused` for this reason. */
  readonly says?: string;
}

const noise = (random: Random, bytes: number, from = 0): string =>
  Array.from({ length: bytes }, () => String.fromCharCode(random.whole([from, 255]))).join('');

/** Until so many seconds have passed. */
const keepOn = async (seconds: number, everyMs: number, act: () => void): Promise<void> => {
  for (const until = performance.now() + 1000 * seconds; performance.now() < until; ) {
    act();
    await wait(everyMs);
  }
};

const sound = 'RES,+388.00,OHM,----\r\n';

export const streamFaults: readonly Fault[] = [
  {
    name: 'unplugged, back as another device',
    says: 'link-lost',
    run: async (peer) => {
      await peer.unplug();
      await wait(1500);
      await peer.plugIn();
    },
  },
  {
    name: 'half a line, unplugged, the other half',
    run: async (peer) => {
      peer.send('RES,+3');
      await wait(60);
      await peer.unplug();
      await wait(300);
      await peer.plugIn();
      await wait(700);
      peer.send('88.00,OHM,----\r\n');
    },
  },
  {
    name: 'garbage bursts',
    run: (peer, random) => keepOn(1, 50, () => peer.send(noise(random, 400))),
  },
  {
    name: 'wrong speed',
    run: (peer, random) => keepOn(1, 100, () => peer.send(noise(random, 12, 0x80))),
  },
  { name: 'silence, then well again', says: 'meter-silent', run: () => wait(3000) },
  {
    name: 'flood of 10,000 lines a second',
    run: (peer) => keepOn(1, 10, () => peer.send(sound.repeat(100))),
  },
  {
    name: 'line without an end',
    run: async (peer) => {
      for (let sent = 0; sent < 16; sent += 1) peer.send('8'.repeat(65536));
      await wait(200);
      peer.send('\r\n');
    },
  },
  {
    name: 'torn lines',
    run: (peer, random) =>
      keepOn(1, 50, () => peer.send(`${sound.slice(0, random.whole([1, 12]))}\r\n`)),
  },
  {
    name: 'function switched by hand',
    says: 'wrong-function',
    run: (peer) => keepOn(1.5, 100, () => peer.send('DCV,+2.0000,V,----\r\n')),
  },
  {
    name: 'hold pressed',
    says: 'flag-hold',
    run: (peer) => keepOn(1.5, 100, () => peer.send('RES,+388.00,OHM,H---\r\n')),
  },
  {
    name: 'low battery',
    run: (peer) => keepOn(1, 100, () => peer.send('RES,+388.00,OHM,---B\r\n')),
  },
];

/** How an instrument treats its questions while something is wrong with it. */
export type Manner =
  | 'well'
  | 'mute'
  | 'lossy'
  | 'echo'
  | 'twice'
  | 'twice-apart'
  | 'late'
  | 'swapped'
  | 'babble';

export interface AskedFault {
  readonly name: string;
  readonly manner: Manner;
  readonly forS: number;
}

export const askedFaults: readonly AskedFault[] = [
  { name: 'stuck peer', manner: 'mute', forS: 6 },
  { name: 'answers lost now and then', manner: 'lossy', forS: 4 },
  { name: 'echo', manner: 'echo', forS: 2 },
  { name: 'every answer twice', manner: 'twice', forS: 2 },
  { name: 'every answer twice, apart', manner: 'twice-apart', forS: 2 },
  { name: 'answers after the time-out', manner: 'late', forS: 8 },
  { name: 'answers in another order', manner: 'swapped', forS: 2 },
  { name: 'babble between the answers', manner: 'babble', forS: 2 },
];

// One walk of the built program on a hostile wire: what it took in, when, and whether any of it was never meant.
import { setTimeout as wait } from 'node:timers/promises';
import type { Random } from '../../benchmarks/shared/random.js';
import { type Running, startProgram } from '../../support/run-program.js';
import type { askedFaults, Fault, Manner } from './faults.js';
import type { Peer } from './peers.js';

export interface Outcome {
  readonly name: string;
  /** Seconds from the fault's end to the first reading of what the meter says then. */
  readonly recoveredS: number;
  /** Numbers taken in that the meter never said, or said long before. */
  readonly wrong: readonly number[];
  /** A reason the walk should have given and did not, or null. */
  readonly unsaid: string | null;
}

interface Told {
  readonly type: string;
  readonly value?: number;
  readonly function?: string;
  readonly reason?: string;
}

const patienceS = 20;
const everyMs = 100;
/** An instrument's answer takes so long. */
const measuringMs = 50;

const startWalk = (peer: Peer, driver: string, session: string): Running =>
  startProgram([
    ...['walk', '--link', peer.link, '--driver', driver, '--profile', 'demo', '--wait'],
    ...['--no-ground-check', '--cautions-confirmed', '--session', session, '--json', '--readings'],
  ]);

const until = async (isDone: () => boolean): Promise<number> => {
  const from = performance.now();
  while (!isDone()) {
    if (performance.now() - from > 1000 * patienceS) return Number.POSITIVE_INFINITY;
    await wait(5);
  }
  return (performance.now() - from) / 1000;
};

const stop = async (walk: Running): Promise<void> => {
  walk.child.kill('SIGTERM');
  const tooLong = setTimeout(() => walk.child.kill('SIGKILL'), 5000);
  await walk.ended;
  clearTimeout(tooLong);
};

/** A meter that talks by itself, through one fault after the other. */
export const throughStreamFaults = async (
  peer: Peer,
  faults: readonly Fault[],
  session: string,
  random: Random,
): Promise<readonly Outcome[]> => {
  const walk = startWalk(peer, 'stream-fields-flags', session);
  const told: Told[] = [];
  const outcomes: Outcome[] = [];
  const meant = new Set([388]);
  let next = 0;
  const talk = setInterval(() => {
    if (!talking) return;
    const value = 100 + next / 100;
    next = (next + 1) % 20_000;
    meant.add(Number(value.toFixed(2)));
    peer.send(`RES,+${value.toFixed(2)},OHM,----\r\n`);
  }, everyMs);
  let talking = true;
  const look = (): void => {
    for (const line of walk.lines.slice(told.length)) told.push(JSON.parse(line));
  };
  const ohms = (from: number): number[] => {
    look();
    return told
      .slice(from)
      .flatMap(({ type, value, function: measure }) =>
        type === 'reading-taken' && value !== undefined && measure === 'resistance' ? [value] : [],
      );
  };
  try {
    if ((await until(() => ohms(0).length > 5)) > patienceS) throw new Error('nothing was heard');
    for (const { name, run, says } of faults) {
      await wait(800);
      look();
      const from = told.length;
      talking = false;
      await run(peer, random);
      const after = 100 + next / 100;
      talking = true;
      const recoveredS = await until(() =>
        ohms(from).some((value) => value >= after && value < after + 50),
      );
      await wait(200);
      outcomes.push({
        name,
        recoveredS,
        wrong: ohms(from).filter((value) => !meant.has(value)),
        unsaid:
          says !== undefined && !told.slice(from).some(({ reason }) => reason === says)
            ? says
            : null,
      });
    }
  } finally {
    clearInterval(talk);
    await stop(walk);
  }
  return outcomes;
};

/** An instrument that is asked, through one manner after the other. Every answer is a number of its own. */
export const throughAskedFaults = async (
  peer: Peer,
  faults: typeof askedFaults,
  session: string,
): Promise<readonly Outcome[]> => {
  let manner: Manner = 'well';
  let asked = 0;
  let rest = '';
  let held: string | null = null;
  const numberOf = (count: number): number => Number((100 + count / 100).toFixed(2));
  const answer = (line: string): string | null => {
    if (line === '*IDN?') return 'DEMO,MODEL,1,1';
    if (line === 'SYST:ERR?') return '0,"No error"';
    if (line !== 'READ?') return null;
    asked += 1;
    return `+${numberOf(asked).toExponential(8).replace('e+', 'E+0')}`;
  };
  const say = (text: string): void => peer.send(`${text}\r\n`);
  const onLine = (line: string): void => {
    const text = answer(line);
    if (manner === 'echo') say(line);
    if (text === null || manner === 'mute') return;
    switch (manner) {
      case 'twice':
        setTimeout(() => say(`${text}\r\n${text}`), measuringMs);
        return;
      case 'late':
        setTimeout(() => say(text), 5600);
        return;
      case 'swapped':
        if (held === null) held = text;
        else {
          say(text);
          say(held);
          held = null;
        }
        return;
      case 'babble':
        setTimeout(() => say(`?;,x9\r\n${text}`), measuringMs);
        return;
      default:
        setTimeout(() => say(text), measuringMs);
    }
  };
  peer.hear((text) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) onLine(line.trim());
  });
  const walk = startWalk(peer, 'scpi-read', session);
  const wrong: number[] = [];
  let seen = 0;
  let latest = 0;
  const look = (): void => {
    for (const line of walk.lines.slice(seen)) {
      seen += 1;
      const event: Told = JSON.parse(line);
      if (event.type !== 'reading-taken' || event.value === undefined) continue;
      const number = Math.round((event.value - 100) * 100);
      // The answer to a question that was asked before the latest but one is stale.
      if (number < 1 || number > asked || number < asked - 1) wrong.push(event.value);
      else latest = number;
    }
  };
  const watch = setInterval(look, 2);
  const outcomes: Outcome[] = [];
  try {
    if ((await until(() => latest > 3)) > patienceS) throw new Error('nothing was heard');
    for (const fault of faults) {
      const before = wrong.length;
      manner = fault.manner;
      await wait(1000 * fault.forS);
      manner = 'well';
      held = null;
      const after = asked;
      const recoveredS = await until(() => latest > after);
      await wait(500);
      outcomes.push({ name: fault.name, recoveredS, wrong: wrong.slice(before), unsaid: null });
    }
  } finally {
    clearInterval(watch);
    await stop(walk);
  }
  return outcomes;
};

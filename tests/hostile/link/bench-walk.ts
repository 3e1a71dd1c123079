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
/** An answer given twice is given so long after the first time. */
const apartMs = 5;

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

/** What an instrument that is asked is asked with, and how it answers. */
interface Asked {
  readonly driver: string;
  /** The questions in what was received, and what is left of it. */
  questionsIn(text: string): readonly [readonly string[], string];
  readonly readingAsked: string;
  says(value: number): string;
  /** Answers to other questions. */
  readonly others: Readonly<Record<string, string>>;
  /** Later than its driver waits, and no later than its driver reckons with. */
  readonly lateMs: number;
}

export const instrument: Asked = {
  driver: 'scpi-read',
  questionsIn: (text) => {
    const lines = text.split('\n').map((line) => line.trim());
    return [lines.slice(0, -1), lines.at(-1) ?? ''];
  },
  readingAsked: 'READ?',
  says: (value) => `+${value.toExponential(8).replace('e+', 'E+0')}`,
  others: { '*IDN?': 'DEMO,MODEL,1,1', 'SYST:ERR?': '0,"No error"' },
  lateMs: 5600,
};

/** It has no question by which the program could find its place again. */
export const keyMeter: Asked = {
  driver: 'key-request',
  questionsIn: (text) => [[...text], ''],
  readingAsked: '?',
  says: (value) => `OH  ${value.toFixed(2)} O`,
  others: {},
  lateMs: 1300,
};

/** Through one manner after the other. Every answer is a number of its own. */
export const throughAskedFaults = async (
  peer: Peer,
  meter: Asked,
  faults: typeof askedFaults,
  session: string,
): Promise<readonly Outcome[]> => {
  let manner: Manner = 'well';
  let asked = 0;
  let rest = '';
  let held: string | null = null;
  let [lastAt, lateUntil] = [0, 0];
  const numberOf = (count: number): number => Number((100 + count / 100).toFixed(2));
  const answer = (question: string): string | null => {
    if (question !== meter.readingAsked) return meter.others[question] ?? null;
    asked += 1;
    return meter.says(numberOf(asked));
  };
  const say = (text: string): void => peer.send(`${text}\r\n`);
  /** Answers come in the order of the questions, however late. */
  const sayAfter = (afterMs: number, text: string, speak = say): number => {
    lastAt = Math.max(lastAt, performance.now() + afterMs);
    setTimeout(() => speak(text), lastAt - performance.now());
    return lastAt;
  };
  /** Without a timer between: on a busy machine that one would come when the next answer is due. */
  const sayTwice = (text: string): void => {
    say(text);
    const until = performance.now() + apartMs;
    while (performance.now() < until);
    say(text);
  };
  const onQuestion = (question: string): void => {
    const text = answer(question);
    if (manner === 'echo') say(question);
    if (text === null || manner === 'mute') return;
    switch (manner) {
      case 'lossy':
        if (asked % 3 !== 0) sayAfter(measuringMs, text);
        return;
      case 'twice':
        sayAfter(measuringMs, `${text}\r\n${text}`);
        return;
      case 'twice-apart':
        sayAfter(measuringMs, text, sayTwice);
        return;
      case 'late':
        lateUntil = sayAfter(meter.lateMs, text);
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
        sayAfter(measuringMs, `?;,x9\r\n${text}`);
        return;
      default:
        sayAfter(measuringMs, text);
    }
  };
  peer.hear((text) => {
    const [questions, left] = meter.questionsIn(rest + text);
    rest = left;
    for (const question of questions) onQuestion(question);
  });
  const walk = startWalk(peer, meter.driver, session);
  const wrong: number[] = [];
  let seen = 0;
  let latest = 0;
  const look = (): void => {
    for (const line of walk.lines.slice(seen)) {
      seen += 1;
      const event: Told = JSON.parse(line);
      if (event.type !== 'reading-taken' || event.value === undefined) continue;
      const number = Math.round((event.value - 100) * 100);
      // An answer given twice counts once, and the answer to a question before the latest but one is stale.
      if (number <= latest || number > asked || number < asked - 1) wrong.push(event.value);
      else latest = number;
    }
  };
  const watch = setInterval(look, 2);
  const outcomes: Outcome[] = [];
  try {
    if ((await until(() => latest > 25)) > patienceS) throw new Error('nothing was heard');
    for (const fault of faults) {
      const before = wrong.length;
      manner = fault.manner;
      await wait(1000 * fault.forS);
      manner = 'well';
      held = null;
      // Late answers are a fault until the last of them is there.
      await wait(Math.max(0, lateUntil - performance.now()));
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

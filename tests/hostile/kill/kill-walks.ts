// Live walks of the built program over a pseudo-terminal, ended by `kill -9` at drawn moments and taken up again. Says
// of each kill whether everything that was shown is in the file, and whether the walk goes on at the right pin.
import { existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { EventOf, Numbered } from '../../../src/core/events.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { FileError } from '../../../src/store/file-error.js';
import { readSession } from '../../../src/store/journal-reader.js';
import type { Random } from '../../benchmarks/shared/random.js';
import { runProgram, startProgram } from '../../support/run-program.js';
import { countShown, type Face, type RunningFace, startFace, unsupported } from './faces.js';

export interface Killed {
  readonly walk: number;
  readonly face: Face;
  /** Seconds after its start, or after its first event. */
  readonly atS: number;
  /** Lines, events or verdicts on the screen. */
  readonly shown: number;
  readonly stored: number;
  readonly tornBytes: number;
  /** What was lost or wrong, in words; empty where all is well. */
  readonly wrong: readonly string[];
}

export interface KilledWalks {
  readonly kills: readonly Killed[];
  /** Walks that came to their end. */
  readonly finished: number;
  /** Pins of finished walks with a verdict other than the board deserves. */
  readonly misread: readonly string[];
}

export interface KillWish {
  readonly folder: string;
  readonly random: Random;
  readonly kills: number;
  /** Drawn from for each kill. */
  readonly faces: readonly Face[];
  readonly profile: string;
  /** After a bench's name: its scenario and how it is run. */
  readonly bench: string;
  /** Verdicts that are not normal, by line. */
  readonly deserved: Readonly<Record<string, string>>;
  /** Lets every walk go on to its end after its kills, and looks at what it found. */
  readonly finish: boolean;
  readonly told?: (killed: Killed) => void;
}

const driver = 'stream-fields-flags';
/** One kill in so many comes while the program is still starting. */
const atStart = 8;
const longestStartS = 1;
const longestWalkS = 2.5;
/** A screen is slower to begin, and shows verdicts only once there are some. */
const longestOnScreenS = 10;
/** Of one walk; then it is left alone until it ends. */
const mostKills = 20;
const longestWholeWalkS = 240;

/** @throws Error when the bench cannot be served, or a walk ends as none should. */
export const killWalks = async (wish: KillWish): Promise<KilledWalks> => {
  const kills: Killed[] = [];
  const misread: string[] = [];
  let finished = 0;
  for (let walk = 0; kills.length < wish.kills; walk += 1) {
    const session = join(wish.folder, `walk-${walk}.jsonl`);
    const bench = startProgram([
      ...['bench', wish.bench, '--pty', join(wish.folder, `meter-${walk}`), '--driver', driver],
      ...['--profile', wish.profile, '--hear', session],
    ]);
    try {
      const link = await bench.line((line) => line.startsWith('serial:'));
      const begin = ['walk', '--link', link, '--driver', driver, '--profile', wish.profile];
      const start = (
        face: Face,
      ): { readonly running: RunningFace; readonly before: Stored | null } => {
        const before = storedOrNone(session);
        const args =
          before === null
            ? [...begin, '--session', session, '--cautions-confirmed']
            : ['walk', '--resume', session];
        return { running: startFace(face, args, session), before };
      };
      let isOver = false;
      for (let here = 0; here < mostKills && kills.length < wish.kills && !isOver; here += 1) {
        const face = wish.faces[wish.random.whole([0, wish.faces.length - 1])] ?? 'json';
        const { running, before } = start(face);
        const { atS, ended } = await untilKill(running, face, wish.random);
        if (ended !== null && ended.code !== 0)
          throw new Error(`a walk ended with ${ended.code}: ${ended.stderr}`);
        isOver = ended !== null;
        if (isOver) continue;
        const shown = await running.kill();
        const found = { walk, face, atS, ...lookAfter(session, before, face, shown) };
        kills.push(found);
        wish.told?.(found);
      }
      if (!wish.finish) continue;
      if (!isOver) {
        const { running } = start('json');
        await Promise.race([running.ended, wait(1000 * longestWholeWalkS, null, { ref: false })]);
        await running.kill();
      }
      finished += 1;
      misread.push(...misreadIn(session, wish.deserved));
      const checked = await runProgram(['check', session]);
      if (checked.code !== 0) misread.push(`check: ${checked.lines.join()}`);
    } finally {
      bench.child.kill('SIGTERM');
      await bench.ended;
    }
  }
  return { kills, finished, misread };
};

/** Seconds after its start or after the first that it showed; and how it ended, if it did so by itself. */
const untilKill = async (
  running: RunningFace,
  face: Face,
  random: Random,
): Promise<{
  readonly atS: number;
  readonly ended: Awaited<RunningFace['ended']> | null;
}> => {
  const isEarly = random.chance(1 / atStart);
  const longestS = face === 'screen' ? longestOnScreenS : longestWalkS;
  const atS = random.uniform([0, isEarly ? longestStartS : longestS]);
  if (!isEarly) await running.begun;
  const ended = await Promise.race([wait(1000 * atS, null), running.ended]);
  return { atS, ended };
};

interface Stored {
  readonly events: readonly Numbered[];
  readonly tornBytes: number;
  readonly state: WalkState | null;
}

/** Everything whole in a session file. @throws FileError when it is damaged. */
const storedIn = (path: string): Stored => {
  const found = readSession(path);
  const events: Numbered[] = [];
  for (let next = found.next(); ; next = found.next()) {
    if (next.done === true) {
      const [opened, ...rest] = events;
      const state =
        opened?.type === 'session-opened' ? rest.reduce<WalkState>(evolve, openWalk(opened)) : null;
      return { events, tornBytes: next.value.tornBytes, state };
    }
    events.push(next.value);
  }
};

/** Null where there is nothing to go on with; a file that holds nothing is deleted, as the program advises. */
const storedOrNone = (path: string): Stored | null => {
  if (!existsSync(path)) return null;
  if (statSync(path).size > 0) return storedIn(path);
  rmSync(path);
  return null;
};

const lookAfter = (
  session: string,
  before: Stored | null,
  face: Face,
  shown: readonly string[],
): Pick<Killed, 'shown' | 'stored' | 'tornBytes' | 'wrong'> => {
  const wrong: string[] = [];
  const count = countShown(face, shown);
  let stored: Stored = { events: [], tornBytes: 0, state: null };
  try {
    if (existsSync(session)) stored = storedIn(session);
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    const isEmpty = /the file is empty|no whole event/u.test(error.message);
    if (!isEmpty || count > 0) wrong.push(error.message);
  }
  const { events, tornBytes } = stored;
  wrong.push(...unsupported[face](shown, events), ...wrongPin(before, events));
  return { shown: count, stored: events.length, tornBytes, wrong };
};

/** A walk that was taken up again says at once which pin it waits for or asks about: the one the file ended with. */
const wrongPin = (before: Stored | null, stored: readonly Numbered[]): string[] => {
  const state = before?.state ?? null;
  const events = stored.slice(before?.events.length ?? 0);
  if (state === null || state.stage !== 'walking' || events[0]?.type !== 'session-resumed')
    return [];
  const due = state.plan.pins[state.cursor]?.pin;
  const said = events.find(
    (event): event is Numbered<EventOf<'pin-reached' | 'question-asked'>> =>
      event.type === 'pin-reached' || event.type === 'question-asked',
  );
  return said === undefined || said.pin === due ? [] : [`went on at ${said.pin}, not ${due}`];
};

const misreadIn = (session: string, deserved: Readonly<Record<string, string>>): string[] => {
  const { state } = storedIn(session);
  if (state === null) return ['the finished session cannot be read'];
  return state.plan.pins.flatMap(({ pin, line }, at) => {
    const verdict = state.pins[at]?.verdict ?? 'unread';
    const due = deserved[line] ?? 'normal';
    return verdict === due ? [] : [`${session}: pin ${pin}, ${line}: ${verdict}, not ${due}`];
  });
};

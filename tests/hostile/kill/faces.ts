// The faces in which a walk may be killed, and what each had shown by then: is all of it in the session file?
import { existsSync, statSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import type { Numbered } from '../../../src/core/events.js';
import type { Verdict } from '../../../src/core/verdict.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { describe } from '../../../src/core/words/describe.js';
import { english } from '../../../src/core/words/english.js';
import { verdictSigns } from '../../../src/core/words/verdict-signs.js';
import { programPath, startProgram } from '../../support/run-program.js';
import { openTerminal } from '../../support/terminal.js';

export const faces = ['json', 'plain', 'screen'] as const;
export type Face = (typeof faces)[number];

export interface RunningFace {
  /** Something has been shown, or it has ended. */
  readonly begun: Promise<unknown>;
  /** An exit code where it ends by itself; a screen stays. */
  readonly ended: Promise<{ readonly code: number | null; readonly stderr: string }>;
  /** Kills it and returns what it had shown: lines, or the rows of the screen. */
  kill(): Promise<readonly string[]>;
}

/** @param args of `walk`, without a word of how it is shown. */
export const startFace = (face: Face, args: readonly string[], session: string): RunningFace =>
  face === 'screen' ? onScreen(args, session) : inLines(face, args);

const inLines = (face: 'json' | 'plain', args: readonly string[]): RunningFace => {
  const form = face === 'json' ? ['--json', '--readings'] : ['--plain'];
  const { child, ended, lines, line } = startProgram([...args, ...form]);
  return {
    begun: line(() => true).catch(() => undefined),
    ended,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
      return lines;
    },
  };
};

const onScreen = (args: readonly string[], session: string): RunningFace => {
  const before = existsSync(session) ? statSync(session).size : 0;
  const words = [process.execPath, programPath, ...args, '--no-intake', '--skip-residual', 'demo'];
  const command = words.map((word) => `'${word}'`).join(' ');
  const terminal = openTerminal({ columns: 80, rows: 24, command, env: { LC_ALL: 'C' } });
  let over = false;
  const begun = async (): Promise<void> => {
    while (!over && !(existsSync(session) && statSync(session).size > before)) await wait(5);
  };
  return {
    begun: begun(),
    ended: new Promise(() => undefined),
    kill: async () => {
      over = true;
      // What the shell says of the kill would move the screen: it is read while the program stands still.
      terminal.signal('SIGSTOP');
      await wait(200);
      const rows = terminal.screen();
      terminal.signal('SIGKILL');
      await terminal.until('rc=137');
      terminal.close();
      return rows;
    },
  };
};

/** What was shown and cannot have come from what is stored, in words. */
export const unsupported: Readonly<
  Record<Face, (shown: readonly string[], stored: readonly Numbered[]) => readonly string[]>
> = {
  json: (lines, stored) => {
    const bySeq = new Map(stored.map((event) => [event.seq, event]));
    // The last line may have been cut off by the kill: it was not printed whole.
    return lines
      .filter((line, at) => at < lines.length - 1 || line.endsWith('}'))
      .map((line) => JSON.parse(line) as Numbered)
      .flatMap((event) => {
        const kept = bySeq.get(event.seq);
        if (kept === undefined) return [`printed event ${event.seq} is not in the file`];
        return isDeepStrictEqual(kept, event)
          ? []
          : [`printed event ${event.seq} is another in the file`];
      });
  },
  plain: (lines, stored) => {
    const sayable = linesOf(stored);
    return lines
      .filter((line, at) => !sayable.has(line) && at < lines.length - 1)
      .map((line) => `printed, and told by nothing in the file: ${line}`);
  },
  screen: (rows, stored) =>
    cellsOn(rows).flatMap(({ pin, sign }) => {
      const judged = stored.flatMap((event) =>
        event.type === 'pin-judged' && event.pin === pin ? [verdictSigns[event.verdict]] : [],
      );
      return judged.includes(sign)
        ? []
        : [`pin ${pin} was shown as ${sign}, and is not in the file`];
    }),
};

/** So many events of one decision are told with the state they lead to together. */
const longestDecision = 12;

const linesOf = ([opened, ...rest]: readonly Numbered[]): ReadonlySet<string> => {
  if (opened?.type !== 'session-opened') return new Set();
  let state: WalkState = openWalk(opened);
  const states = [state, ...rest.map((event) => (state = evolve(state, event)))];
  return new Set(
    [opened, ...rest].flatMap((event, at) =>
      event.type === 'reading-taken'
        ? []
        : states
            .slice(at, at + longestDecision)
            .flatMap((after) => describe(event, after, english)?.split('\n') ?? []),
    ),
  );
};

const perRow = 20;
const signs: ReadonlySet<string> = new Set(
  Object.entries(verdictSigns).flatMap(([verdict, sign]) =>
    (verdict as Verdict) === 'unread' ? [] : [sign],
  ),
);

/** The pins whose verdict the strip of the demo connector shows. */
const cellsOn = (rows: readonly string[]): readonly { pin: string; sign: string }[] =>
  rows.flatMap((row) => {
    const found = /^ row (?<row>[12]) +(?<cells>.+)$/u.exec(row)?.groups;
    const cells = found?.cells?.split(/ +/u) ?? [];
    if (cells.length !== perRow) return [];
    return cells.flatMap((sign, at) => {
      const pin = String((Number(found?.row) - 1) * perRow + at + 1);
      if (/^\d+$/u.test(sign) && sign !== pin) throw new Error(`pin ${pin} is shown as ${sign}`);
      return signs.has(sign) ? [{ pin, sign }] : [];
    });
  });

/** How many things a person or a program was told. */
export const countShown = (face: Face, shown: readonly string[]): number =>
  face === 'screen' ? cellsOn(shown).length : shown.length;

// Walks every recorded session: the file is sound, a replay ends where the file does, walking the stored readings
// again gives the same captures and verdicts, and each shows what it is there to teach. After a change of the walk
// they are remade with `npx tsx tests/tooling/record-sessions.ts`.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { EventOf, Numbered, WalkEvent } from '../../src/core/events.js';
import type { Input } from '../../src/core/inputs.js';
import { judgeRecord } from '../../src/core/press/judge-record.js';
import { setupForLine } from '../../src/core/press/press-setup.js';
import { createLogParser } from '../../src/core/reading-log.js';
import { logLines, pressLogLines } from '../../src/core/replay/log-lines.js';
import { eventAt, goOn, placeAt } from '../../src/core/replay/recording.js';
import type { Verdict } from '../../src/core/verdict.js';
import { evolve } from '../../src/core/walk/evolve.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { rerunSession } from '../../src/core/walk/rerun.js';
import type { WalkState } from '../../src/core/walk/state.js';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { openRecording } from '../../src/store/open-recording.js';
import { longestNote } from '../tooling/sessions/lesson.js';
import { lessons } from '../tooling/sessions/lessons.js';

const folder = fileURLToPath(new URL('../../recordings/sessions/', import.meta.url));
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => name.slice(0, -'.jsonl'.length));

const leastSessions = 3;
const mostBytes = 1_500_000;

const pathOf = (name: string): string => `${folder}${name}.jsonl`;

interface Session {
  readonly opened: EventOf<'session-opened'>;
  readonly events: readonly Numbered[];
  readonly state: WalkState;
}

const load = (name: string): Session => {
  const events = [...readSession(pathOf(name))];
  const opened = events[0];
  if (opened?.type !== 'session-opened') throw new Error(`${name} has no header`);
  return { opened, events, state: events.reduce<WalkState>(evolve, openWalk(opened)) };
};

const told = <K extends WalkEvent['type']>(
  events: readonly WalkEvent[],
  ...types: readonly K[]
): readonly EventOf<K>[] =>
  events
    .filter((event): event is EventOf<K> => types.some((type) => type === event.type))
    .map((event) => {
      const { seq: _seq, ...rest } = event as EventOf<K> & Partial<Numbered>;
      return rest as unknown as EventOf<K>;
    });

const notNormal = ({ plan, pins }: WalkState): readonly (readonly [string, Verdict])[] =>
  pins.flatMap(({ verdict }, at) =>
    verdict === 'normal' ? [] : [[plan.pins[at]?.pin ?? '', verdict] as const],
  );

describe('the recorded sessions', () => {
  it('should be at least three, one for each lesson', () => {
    expect(names.length).toBeGreaterThanOrEqual(leastSessions);
    expect([...names].sort()).toEqual(lessons.map(({ name }) => name).sort());
  });

  describe.each(names)('%s', (name) => {
    const { opened, events, state } = load(name);

    it('should be sound, chained from its first line to its last, and small', () => {
      const check = checkFile(pathOf(name));
      expect(check.kind).toBe('session');
      expect(check.problems).toEqual([]);
      expect(check.fingerprint).toMatch(/^[0-9a-f]{64}$/u);
      expect(statSync(pathOf(name)).size).toBeLessThan(mostBytes);
    });

    it('should say that it is simulated and of an invented board', () => {
      expect(opened.simulated).toBe(true);
      expect(opened.link).toMatch(/^virtual:/u);
      expect(opened.profile.content.demo).toBe(true);
    });

    it('should have been walked to its end and closed', () => {
      expect(told(events, 'walk-finished')).not.toHaveLength(0);
      expect(told(events, 'session-closed')).toEqual([
        expect.objectContaining({ reason: 'finished' }),
      ]);
      expect(state.pins.filter(({ verdict }) => verdict === 'unread')).toEqual([]);
    });

    it('should end in a replay as in the file, played through and gone to', () => {
      const { recording, close } = openRecording(pathOf(name));
      onTestFinished(close);
      expect(recording.count).toBe(events.length);
      expect(recording.endState).toEqual(state);
      let place = placeAt(recording, 0);
      for (let event = eventAt(recording, 0); event; event = eventAt(recording, place.at)) {
        place = goOn(place, event);
      }
      expect(place.at).toBe(events.length);
      expect(place.state).toEqual(state);
    });

    it('should give the same captures, names and verdicts from its stored readings', () => {
      const again = [...rerunSession(opened, events.slice(1))];
      const kinds = ['touch-captured', 'pin-settled', 'pin-judged', 'press-judged'] as const;
      const before = told(events, ...kinds);
      expect(before.length).toBeGreaterThanOrEqual(3 * 40);
      expect(told(again, ...kinds)).toEqual(before);
    });

    it('should have a note at each moment that teaches, short enough for one line', () => {
      const lesson = lessons.find((known) => known.name === name);
      const notes = told(events, 'act-taken').filter(({ act }) => act === 'note');
      expect(notes.length).toBeGreaterThanOrEqual(5);
      expect(notes.map(({ text }) => text)).toEqual(lesson?.notes.map(({ text }) => text));
      for (const { text = '' } of notes) expect(text.length).toBeLessThanOrEqual(longestNote);
    });

    it('should be written as a reading log that names what the log leaves out', () => {
      const log = logLines(opened);
      const lines = events.slice(1).flatMap((event) => log.take(event));
      const parse = createLogParser();
      expect(lines.map(parse).filter(({ kind }) => kind === 'reading').length).toBeGreaterThan(500);
      expect(log.notInLog.groundCheck).toBeGreaterThan(0);
      expect(log.notInLog.notes).toBeGreaterThan(0);
    });
  });
});

describe('what each session shows', () => {
  it('should be a board on which everything is normal', () => {
    expect(notNormal(load('healthy-board').state)).toEqual([]);
  });

  it('should be two opens through one loose part, found by pressing', () => {
    const { state, events } = load('loose-filter');
    expect(notNormal(state)).toEqual([
      ['5', 'open'],
      ['6', 'open'],
    ]);
    const findings = told(events, 'press-judged').map(({ line, part, finding }) => [
      line,
      part,
      finding,
    ]);
    expect(findings).toEqual([
      ['LANE1_P', 'FL2', 'loose'],
      ['LANE1_P', 'bare-board', 'steady-open'],
      ['LANE1_N', 'FL2', 'loose'],
      ['LANE1_N', 'bare-board', 'steady-open'],
    ]);
  });

  it('should find the same loose part when the press test is judged from a log of it', () => {
    const { state, opened, events } = load('loose-filter');
    expect(opened.seed).toBeDefined();
    for (const [part, finding] of [
      ['FL2', 'loose'],
      ['bare-board', 'steady-open'],
    ] as const) {
      const log = pressLogLines({ line: 'LANE1_P', part });
      const parse = createLogParser();
      const inputs: readonly Input[] = events.flatMap((event) => log.take(event)).map(parse);
      expect(log.notInLog.pressTests).toBe(1);
      const result = judgeRecord(setupForLine(state.plan, 'LANE1_P', part), inputs);
      expect(result.finding).toBe(finding);
    }
  });

  it('should be one leaky line, and a meter that reads high on all of them', () => {
    const { state } = load('shifted-leaky');
    expect(notNormal(state).map(([pin]) => pin)).toEqual(['8']);
    const shares = state.pins.flatMap(({ value }, at) => {
      const expected = state.plan.pins[at]?.expected ?? null;
      return at !== 7 &&
        value !== null &&
        expected !== null &&
        expected !== 'overload' &&
        value > 100
        ? [value / expected.nominal]
        : [];
    });
    expect(shares.length).toBeGreaterThanOrEqual(20);
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(mean).toBeGreaterThan(1.04);
    expect(mean).toBeLessThan(1.08);
    const { signal } = state.shiftsTold;
    const error = signal !== null && 'scale' in signal ? signal.scale - 1.06 : 1;
    expect(Math.abs(error)).toBeLessThan(2 * (signal?.standardUncertainty ?? 0));
  });
});

describe('the lessons', () => {
  it('should name no path, host or person', () => {
    const text = names.map((name) => readFileSync(pathOf(name), 'utf8')).join('\n');
    expect(text).not.toMatch(/\/(?:home|root|tmp|Users|work)\//u);
  });
});

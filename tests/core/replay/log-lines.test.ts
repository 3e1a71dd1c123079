// A session written as a reading log, and the log walked again.
import { describe, expect, it } from 'vitest';
import type { EventOf, Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Input } from '../../../src/core/inputs.js';
import { createLogParser } from '../../../src/core/reading-log.js';
import { logLines } from '../../../src/core/replay/log-lines.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { rerun } from '../../../src/core/walk/rerun.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { liveSession } from './live-session.js';
import { numbered, opened, overload } from './recorded-walk.js';

const writeLog = (events: readonly WalkEvent[]) => {
  const [first, ...rest] = events;
  const log = logLines(first as EventOf<'session-opened'>);
  const lines = rest.flatMap((event) => log.take(event));
  const parse = createLogParser();
  return { lines, inputs: lines.map(parse), notInLog: log.notInLog };
};

/** As `rerun` walks a log: no ground check, nothing known but the readings and marks. */
const walkLog = (events: readonly WalkEvent[], inputs: readonly Input[]): readonly WalkEvent[] => {
  const header = events[0] as EventOf<'session-opened'>;
  return [...rerun({ ...header, groundCheck: false }, inputs)];
};

const told = <K extends WalkEvent['type']>(
  events: readonly WalkEvent[],
  type: K,
): readonly EventOf<K>[] =>
  events
    .filter((event): event is EventOf<K> => event.type === type)
    .map((event) => {
      const { seq: _seq, ...rest } = event as EventOf<K> & Partial<Numbered>;
      return rest as unknown as EventOf<K>;
    });

const fold = (events: readonly WalkEvent[]): WalkState =>
  events.slice(1).reduce<WalkState>(evolve, openWalk(events[0] as EventOf<'session-opened'>));

const verdicts = (state: WalkState): string[] => state.pins.map(({ verdict }) => verdict);

const nothing = {
  groundCheck: 0,
  paused: 0,
  notes: 0,
  gaps: 0,
  jumpsAhead: 0,
  pressTests: 0,
  probes: 0,
};

describe('a session without a ground check', () => {
  const session = liveSession({ groundCheck: false, bench: { seed: 4 } });
  const { lines, inputs, notInLog } = writeLog(session.events);

  it('should have been walked to its end', () => {
    expect(session.finished).toBe(true);
  });

  it('should be written whole, reading by reading', () => {
    const readings = told(session.events, 'reading-taken');
    expect(lines).toHaveLength(readings.length);
    expect(inputs[0]).toEqual({
      kind: 'reading',
      reading: expect.objectContaining({ t: readings[0]?.t }),
    });
    expect(notInLog).toEqual(nothing);
  });

  it('should give the same captures and verdicts when the log is walked', () => {
    const again = walkLog(session.events, inputs);
    const captures = told(session.events, 'touch-captured');
    expect(captures.length).toBeGreaterThanOrEqual(40);
    expect(told(again, 'touch-captured')).toEqual(captures);
    expect(told(again, 'pin-settled')).toEqual(told(session.events, 'pin-settled'));
    expect(told(again, 'pin-judged')).toEqual(told(session.events, 'pin-judged'));
  });
});

describe('a session with acts', () => {
  const session = liveSession({
    groundCheck: false,
    bench: { seed: 4, answers: 'key' },
    acts: [
      [9, { act: 'note', text: 'begun' }],
      [30, { act: 'back' }],
      [45, { act: 'go-to', pin: '3' }],
      [60, { act: 'retake' }],
    ],
  });
  const { inputs, notInLog } = writeLog(session.events);

  it('should turn them into marks that are carried out again', () => {
    const done = told(session.events, 'act-taken').map(({ act }) => act);
    expect(done).toEqual(expect.arrayContaining(['back', 'go-to', 'retake', 'open', 'note']));
    const again = walkLog(session.events, inputs);
    const captures = told(session.events, 'touch-captured');
    expect(captures.length).toBeGreaterThanOrEqual(40);
    expect(told(again, 'touch-captured')).toEqual(captures);
    expect(verdicts(fold(again))).toEqual(verdicts(session.state));
  });

  it('should count what a log has no word for', () => {
    expect(notInLog).toEqual({ ...nothing, notes: 1 });
  });
});

describe('a session with a ground check', () => {
  const session = liveSession({ bench: { seed: 6 } });
  const { lines, inputs, notInLog } = writeLog(session.events);

  it('should be written from where the probe leaves the ground', () => {
    const readings = told(session.events, 'reading-taken').length;
    expect(notInLog.groundCheck).toBeGreaterThan(5);
    expect(lines).toHaveLength(readings - notInLog.groundCheck);
    const checked = told(session.events, 'ground-checked')[0]?.t ?? Number.NaN;
    expect(JSON.parse(lines[0] ?? '{}')).toMatchObject({ overload: true });
    expect(JSON.parse(lines[0] ?? '{}').t).toBeGreaterThan(checked);
  });

  it('should name every pin as it was named', () => {
    const again = fold(walkLog(session.events, inputs));
    expect(session.state.pins.filter(({ verdict }) => verdict !== 'unread')).toHaveLength(40);
    expect(verdicts(again)).toEqual(verdicts(session.state));
  });
});

describe('what a log cannot say', () => {
  const header: WalkEvent = { ...opened, groundCheck: false };
  const at = (t: number, act: EventOf<'act-taken'>['act'], pin?: string): WalkEvent => ({
    type: 'act-taken',
    t,
    act,
    ...(pin === undefined ? {} : { pin }),
  });

  it('should leave out what was read while the walk was paused, and count it', () => {
    const { lines, notInLog } = writeLog(
      numbered([
        header,
        overload(1),
        at(2, 'pause'),
        { type: 'walk-paused', t: 2, reason: 'asked' },
        overload(3),
        overload(4),
        at(5, 'resume'),
        { type: 'walk-continued', t: 5, pin: '1' },
        overload(6),
      ]),
    );
    expect(lines.map((line) => JSON.parse(line).t)).toEqual([1, 6]);
    expect(notInLog).toEqual({ ...nothing, paused: 2 });
  });

  it('should write a jump back as steps back, and a jump ahead as skips', () => {
    const reached = (t: number, pin: string): WalkEvent => ({
      type: 'pin-reached',
      t,
      pin,
      line: 'L',
    });
    const { lines, notInLog } = writeLog(
      numbered([
        header,
        reached(0, '9'),
        at(1, 'go-to', '7'),
        reached(1, '7'),
        at(2, 'go-to', '10'),
        reached(2, '10'),
      ]),
    );
    expect(lines.map((line) => JSON.parse(line))).toEqual([
      { t: 1, mark: 'back' },
      { t: 1, mark: 'back' },
      { t: 2, mark: 'skip' },
      { t: 2, mark: 'skip' },
      { t: 2, mark: 'skip' },
    ]);
    expect(notInLog).toEqual({ ...nothing, jumpsAhead: 1 });
  });

  it('should count losses of the link and resumptions', () => {
    const { lines, notInLog } = writeLog(
      numbered([
        header,
        { type: 'link-changed', t: 1, change: 'lost' },
        { type: 'walk-paused', t: 1, reason: 'link-lost' },
        { type: 'session-resumed', t: 9, program: 'x', wallTime: 'x', zone: 'x', tornBytes: 0 },
      ]),
    );
    expect(lines).toEqual([]);
    expect(notInLog).toEqual({ ...nothing, gaps: 2 });
  });

  it('should write readings of every kind as the log parser reads them', () => {
    const { inputs } = writeLog(
      numbered([
        header,
        {
          type: 'reading-taken',
          t: 1,
          function: 'resistance',
          value: 388.25,
          range: 600,
          resolution: 0.01,
          polarity: 'red-walks',
          flags: ['low-battery'],
        },
        { type: 'reading-taken', t: 2, blank: true },
        { type: 'reading-taken', t: 3, fault: 'x\u00b5' },
        { type: 'cue-given', t: 4, cue: 'press' },
      ]),
    );
    expect(inputs).toEqual([
      {
        kind: 'reading',
        reading: {
          t: 1,
          function: 'resistance',
          value: 388.25,
          range: 600,
          resolution: 0.01,
          polarity: 'red-walks',
          flags: ['low-battery'],
        },
      },
      { kind: 'reading', reading: { t: 2, blank: true } },
      { kind: 'reading', reading: { t: 3, fault: 'x\u00b5' } },
      { kind: 'cue', t: 4, cue: 'press' },
    ]);
  });
});

// A session's readings and marks as a reading log, which a rerun walks again. The log begins with the first pin:
// what belongs to the ground check is left out, and so is what was read in a press test or while the walk was
// paused, for a rerun would take it for touches. What a log has no word for is counted, so that it can be said.
// The press tests of one line make a log of their own, which a rerun judges.
import type { EventOf, WalkEvent } from '../events.js';
import { isValue, type Reading } from '../reading.js';
import { formatLogMark, formatLogReading, markedActs } from '../reading-log.js';
import { foldStored, openStored } from '../walk/fold-stored.js';
import { inputOf } from '../walk/input-of.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';

export interface NotInLog {
  /** Readings of the ground check, the last touch of it included. */
  readonly groundCheck: number;
  readonly paused: number;
  readonly pressTests: number;
  /** Readings of places along a line, and of pins touched once more beside the walk. */
  readonly probes: number;
  readonly notes: number;
  /** Times the link was lost, the meter silent, or the session taken up again: a log shows a gap at most. */
  readonly gaps: number;
  /** Jumps ahead, which the log has as pins skipped. */
  readonly jumpsAhead: number;
}

export interface LogLines {
  /** The lines for the next event, without newline; often none. */
  take(event: WalkEvent): readonly string[];
  readonly notInLog: NotInLog;
}

const gapEvents: ReadonlySet<string> = new Set(['link-lost', 'meter-silent']);

const nothingLeftOut: NotInLog = {
  groundCheck: 0,
  paused: 0,
  pressTests: 0,
  probes: 0,
  notes: 0,
  gaps: 0,
  jumpsAhead: 0,
};

export const logLines = (opened: EventOf<'session-opened'>): LogLines => {
  let state: WalkState = openStored(opened);
  let begun = isBegun(state);
  let isBeside = false;
  let notInLog = nothingLeftOut;
  const count = (what: keyof NotInLog): readonly string[] => {
    notInLog = { ...notInLog, [what]: notInLog[what] + 1 };
    return [];
  };

  const linesOf = (event: WalkEvent, before: WalkState): readonly string[] => {
    if (event.type === 'press-begun') return count('pressTests');
    const inPress = before.press !== null && event.type !== 'act-taken';
    const input = inPress ? null : inputOf(event);
    if (input === null) {
      if (event.type === 'session-resumed') count('gaps');
      if (event.type === 'walk-paused' && gapEvents.has(event.reason)) count('gaps');
      return [];
    }
    switch (input.kind) {
      case 'reading':
        if (!begun) return count('groundCheck');
        if (isBeside) return count('probes');
        return before.paused === 'asked'
          ? count('paused')
          : [formatLogReading(withoutLeads(input.reading, before))];
      case 'cue':
        return [formatLogMark(input.t, input.cue)];
      case 'act': {
        if (before.stage === 'ground-check') return [];
        const { act, pin } = input.act;
        if (act === 'note') return count('notes');
        const marked = markedActs.find((known) => known === act);
        if (marked !== undefined) return [formatLogMark(input.t, marked)];
        if (act !== 'go-to') return [];
        const steps = indexOfPin(before, pin ?? '') - Math.min(before.cursor, before.pins.length);
        if (steps > 0) count('jumpsAhead');
        const step = formatLogMark(input.t, steps > 0 ? 'skip' : 'back');
        return Array.from({ length: Math.abs(steps) }, () => step);
      }
      case 'link':
      case 'meter':
      case 'file':
        return [];
    }
  };

  return {
    take(event) {
      const before = state;
      state = foldStored(state, event);
      // The touch that ended the ground check is no touch of the first pin.
      if (!begun && isBegun(state)) begun = state.contact.rest === null;
      // So with a place probed beside the walk: the probe is back once it has left that place.
      isBeside = state.probing !== null || (isBeside && state.contact.rest !== null);
      return linesOf(event, before);
    },
    get notInLog() {
      return notInLog;
    },
  };
};

/** Neither leads nor grounds are tried any more. */
const isBegun = ({ stage, ready, readyNext }: WalkState): boolean =>
  stage !== 'ground-check' && ready === null && readyNext.length === 0;

/** A log knows of no zeroed leads: its readings are without them. */
const withoutLeads = (reading: Reading, { leads }: WalkState): Reading =>
  leads !== null && isValue(reading) ? { ...reading, value: reading.value - leads.ohms } : reading;

/** What the press tests of a line were made at: the part, or null for the first place pressed. */
export interface PressedAt {
  readonly line: string;
  readonly part: string | null;
}

/** The press tests of one place: what was read in them, and their cues. */
export const pressLogLines = ({ line, part }: PressedAt): LogLines => {
  let places = 0;
  let onLine = false;
  let inTest = false;
  let pressTests = 0;
  return {
    take(event) {
      switch (event.type) {
        case 'press-begun':
          onLine = event.line === line;
          places = 0;
          return [];
        case 'press-moved':
          inTest = onLine && (part === null ? places === 0 : event.place === part);
          places += 1;
          if (inTest) pressTests += 1;
          return [];
        case 'press-ended':
          inTest = false;
          return [];
        case 'cue-given':
          return inTest ? [formatLogMark(event.t, event.cue)] : [];
        case 'reading-taken': {
          const input = inTest ? inputOf(event) : null;
          return input?.kind === 'reading' ? [formatLogReading(input.reading)] : [];
        }
        default:
          return [];
      }
    },
    get notInLog() {
      return { ...nothingLeftOut, pressTests };
    },
  };
};

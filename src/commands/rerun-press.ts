// Judges a press test again, on one line: from a session or from a reading log.
import type { EventOf } from '../core/events.js';
import { inputTime } from '../core/inputs.js';
import { freePress } from '../core/press/free-press.js';
import { judgedPress } from '../core/press/judge-press.js';
import { judgeRecord } from '../core/press/judge-record.js';
import { setupForLine } from '../core/press/press-setup.js';
import { tracedPress } from '../core/press/traced-press.js';
import { planWalk } from '../core/profile/plan.js';
import { inputOf } from '../core/walk/input-of.js';
import { english } from '../core/words/english.js';
import { readSession } from '../store/journal-reader.js';
import { loadProfile } from '../store/load-definitions.js';
import { readLog } from '../store/read-log.js';
import { storedKind } from '../store/stored-kind.js';
import { openingOf } from './named-session.js';
import { noSuchLine } from './no-such-line.js';
import { exitCodes, UserError } from './user-error.js';

interface PressAsked {
  readonly line: string;
  readonly profile?: string;
  readonly part?: string;
}

/** A press test alone: the record's cues, or else the technician's own marks, on one line. */
export const rerunPress = (
  file: string,
  { line, profile: asked, part: place }: PressAsked,
): {
  readonly judged: EventOf<'press-judged'>;
  /** What the line did, where the record has no cues: someone pressed at will. */
  readonly traced: EventOf<'press-traced'> | null;
} => {
  const stored = storedKind(file) === 'session' ? readSession(file) : null;
  const opened = stored === null ? null : openingOf(stored.next().value, file);
  const profile = asked === undefined ? opened?.profile.content : loadProfile(asked).content;
  if (profile === undefined) {
    throw new UserError(english.refusals.logNeedsProfile, exitCodes.usage);
  }
  const inputs =
    stored === null ? [...readLog(file)] : [...stored].flatMap((event) => inputOf(event) ?? []);
  const last = inputs.at(-1);
  const plan = planWalk(profile, opened?.measure);
  if (!plan.pins.some((pin) => pin.line === line)) throw noSuchLine(profile, line);
  const part = place ?? null;
  const setup = setupForLine(plan, line, part);
  const t = last === undefined ? 0 : inputTime(last);
  const isPaced = inputs.some(({ kind }) => kind === 'cue');
  return {
    judged: judgedPress(t, judgeRecord(setup, inputs)),
    traced: isPaced ? null : tracedPress(t, line, part, freePress(setup, inputs)),
  };
};

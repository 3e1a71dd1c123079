// What is said about a session that is played, beside what was said in it. Short: the line on the screen has to
// fit a narrow terminal.

import type { NotInLog } from '../replay/log-lines.js';
import type { WaymarkKind } from '../replay/waymark.js';
import type { Verdict } from '../verdict.js';

/** What a key can do while a session is played. */
export const replayActs = [
  'pause',
  'next-waymark',
  'previous-waymark',
  'ahead',
  'back',
  'faster',
  'slower',
  'step-on',
  'step-back',
  'start',
  'end',
  'go-to',
  'repeat',
  'review',
  'keys',
  'quit',
] as const;
export type ReplayAct = (typeof replayActs)[number];

/** How exact the meter was taken to be: as its driver says, as the user said, or as nothing was said. */
export type LogAccuracy =
  | { readonly driver: string }
  | { readonly percent: number; readonly counts: number; readonly fullScaleCounts: number }
  | null;

export interface ReplayWords {
  /** One or two words each, for the key line. */
  readonly key: Readonly<Record<ReplayAct, string>>;
  /** A sentence each, for the page of keys. */
  readonly keyMeans: Readonly<Record<ReplayAct, string>>;
  readonly goOn: string;
  readonly title: string;
  readonly paused: string;
  readonly ended: string;
  speed(factor: number): string;
  /** What comes next worth a look, and how far ahead it is, as a time. */
  next(kind: WaymarkKind, pin: string | null, verdict: Verdict | null, inTime: string): string;
  readonly nothingNext: string;
  readonly goTo: string;
  /** What was typed is neither a time nor a pin. */
  noGoal(typed: string): string;
  /** What a session ended with that was never finished. */
  torn(bytes: number): string;
  neverReached(pin: string): string;
  /** One line each for what a reading log leaves out or cannot say; none where it says everything. */
  notInLog(left: NotInLog): readonly string[];
  noPressTest(line: string, part: string | null): string;
  /** How to judge a log of press tests again. */
  rerunPressLog(profile: string, line: string, part: string | null): string;
  /** How to walk the log again. */
  rerunLog(profile: string, accuracy: LogAccuracy): string;
}

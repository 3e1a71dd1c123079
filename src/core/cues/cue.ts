// A cue: what a person who never looks hears of one event. Its kind decides the tone, its words the speech.
import type { Question } from '../events.js';
import type { CueName } from '../inputs.js';
import type { Verdict } from '../verdict.js';
import type { Tone } from './tone.js';

/** A verdict that is not normal asks for the same pin again, until it agrees. */
export type AgainKind = `${Exclude<Verdict, 'normal' | 'unread'>}-again`;

export type CueKind =
  | Verdict
  | AgainKind
  | 'donor-normal'
  | `question-${Question}`
  | CueName
  | 'press-begun'
  | 'press-place'
  | 'press-sham'
  | 'press-answers'
  | 'press-nothing'
  | 'press-unclear'
  | 'press-compared'
  | 'press-all'
  | 'press-ended'
  | 'press-reads'
  | 'press-lost'
  | 'press-traced'
  | 'suspect'
  | 'heat-on'
  | 'heat-off'
  | 'heat-near'
  | 'heat-passed'
  | 'control-moved'
  | 'recheck-good'
  | 'recheck-not-good'
  | 'probe-place'
  | 'touch-ground'
  | 'ground-first'
  | 'ground-missed'
  | 'ground-good'
  | 'ground-skipped'
  | 'ground-doubted'
  | 'held'
  | 'lead-off'
  | 'freed'
  | 'paused'
  | 'continued'
  | 'link-lost'
  | 'link-back'
  | 'meter-silent'
  | 'meter-error'
  | 'readings-ended'
  | 'file-blocked'
  | 'file-written'
  | 'realigned'
  | 'finished'
  | 'refused'
  | 'reply-asked'
  | 'reply-cancelled'
  | 'reply-shadowed'
  | 'place'
  | 'heard';

/**
 * What gives way to what. An `echo` of an act sounds where nothing else does; a `word` is part of the walk's
 * conversation; a `stop` is not cut by either.
 */
export const levels = { echo: 0, word: 1, stop: 2 } as const;
export type Level = (typeof levels)[keyof typeof levels];

export interface Cue {
  readonly kind: CueKind;
  readonly level: Level;
  readonly tone: Tone;
  /** How often the terminal bell rings where there is nothing better. */
  readonly bells: number;
  /** Letters, digits and plain punctuation only. */
  readonly speech: string;
}

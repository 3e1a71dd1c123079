// What will probably be said next, likeliest first, so that it can be rendered ahead. Guesses go through the same
// door as events: a guessed phrase is letter for letter the one that comes.
import { holdReasons, questions, type WalkEvent } from '../events.js';
import { cueNames } from '../inputs.js';
import { namesOf, type PlannedPin } from '../profile/plan.js';
import type { Verdict } from '../verdict.js';
import type { WalkState } from '../walk/state.js';
import type { Words } from '../words/words.js';
import type { Cue } from './cue.js';
import { cueFor } from './cue-for.js';

const unlike: readonly Verdict[] = ['open', 'short', 'low', 'high', 'unsure', 'wobble'];

/** While a name is in doubt, the next pins are touched before the first of them is told. */
const pinsAhead = 2;

/** Cues of the pin the walk waits for, and the plainest ones of the pins after it. */
export const likelyCues = (state: WalkState, words: Words): readonly Cue[] => {
  const [here, ...ahead] = state.plan.pins.slice(state.cursor, state.cursor + 1 + pinsAhead);
  if (here === undefined) return [];
  return cuesOf(state, words, [
    ...[here, ...ahead].map((pin) => judged(pin, 'normal', true)),
    ...asked(here),
    ...unlike.map((verdict) => judged(here, verdict, false)),
    ...ahead.flatMap(asked),
    ...unlike.map((verdict) => judged(here, verdict, true)),
    judged(here, 'unread', true),
    { type: 'pin-reached', t: state.t, ...namesOf(here) },
    { type: 'walk-continued', t: state.t, pin: here.pin },
  ]);
};

/** Cues that name no pin and can come at any time. */
export const standingCues = (state: WalkState, words: Words): readonly Cue[] => {
  const { t } = state;
  const ground: readonly WalkEvent[] = [
    { type: 'ground-touched', t, value: 0, which: 1 },
    { type: 'ground-missed', t, value: 0 },
    { type: 'ground-repeated', t, value: 0 },
    { type: 'ground-checked', t, outcome: 'good' },
  ];
  return cuesOf(state, words, [
    ...(state.stage === 'ground-check' ? ground : []),
    { type: 'ground-doubted', t, opens: 2 },
    { type: 'walk-freed', t, reason: 'flag-hold' },
    ...(['asked', 'link-lost', 'meter-silent', 'file-blocked'] as const).map(
      (reason) => ({ type: 'walk-paused', t, reason }) as const,
    ),
    ...holdReasons.map((reason) => ({ type: 'walk-held', t, reason, detail: '' }) as const),
    { type: 'link-changed', t, change: 'returned' },
    ...cueNames.map((cue) => ({ type: 'cue-given', t, cue }) as const),
  ]);
};

const asked = ({ pin }: PlannedPin): readonly WalkEvent[] =>
  questions
    .filter((question) => question !== 'shifted')
    .map((question) => ({ type: 'question-asked', t: 0, question, pin }));

const judged = (pin: PlannedPin, verdict: Verdict, agreed: boolean): WalkEvent => ({
  type: 'pin-judged',
  t: 0,
  ...namesOf(pin),
  verdict,
  confidence: 1,
  expected: pin.expected,
  agreed,
});

const cuesOf = (state: WalkState, words: Words, events: readonly WalkEvent[]): readonly Cue[] =>
  events.flatMap((event) => cueFor(event, state, words) ?? []);

// What there is to see of a press test: what the technician is to do, what each window showed, and what every
// place came to. Pure.
import { cleanText } from '../clean-text.js';
import type { EventOf } from '../events.js';
import type { CueName } from '../inputs.js';
import type { CueWindow } from '../press/cue-window.js';
import { mostCycles } from '../press/press-design.js';
import type { PressResult } from '../press/press-result.js';
import { type PressStage, shamPlace } from '../press/press-stage.js';
import type { Side } from '../press/sides.js';
import type { Verdict } from '../verdict.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';

/** What a window showed, in the word for a line like this; `unclear` where it did not hold still. */
export type Shown = 'normal' | 'open' | 'high' | 'short' | 'low' | 'unclear';

/** Pressed at will the prompt says what the line does instead. */
export type PressPrompt = CueName | 'hold-still' | 'done' | 'reads' | 'open';

export interface SeenWindow {
  readonly cue: CueName;
  readonly fromS: number;
  /** Null for the window in force. */
  readonly toS: number | null;
  readonly shown: Shown | null;
}

export interface PlaceView {
  /** Null where no part is named. */
  readonly place: string | null;
  readonly sham: boolean;
  readonly stands: 'done' | 'now' | 'next';
  readonly result: PressResult | null;
}

export type WindowTally = Readonly<Record<CueName, Readonly<Record<Shown, number>>>>;

export interface PressView {
  readonly pin: string;
  readonly line: string;
  readonly prompt: PressPrompt;
  /** The place under the tool; undefined when the test is done. */
  readonly here: PlaceView | undefined;
  readonly places: readonly PlaceView[];
  /** The cycle under way, from 1; the last one when the place is done. */
  readonly cycle: number;
  readonly windows: readonly SeenWindow[];
  /** Windows of the place under the tool, or of the last one. */
  readonly tally: WindowTally;
  /** The place judged last. */
  readonly latest: PlaceView | undefined;
  readonly compared: EventOf<'press-compared'> | null;
  /** Pressed at will: how often the line changed, and whether the tool is said to press. */
  readonly free: { readonly changes: number; readonly pressing: boolean } | null;
  /** What a free test came to. */
  readonly traced: EventOf<'press-traced'> | null;
}

/** The outcome stays so long, or until the probe goes on. */
const outcomeForS = 6;

/** Null where no press test is under way and none has just ended. */
export const selectPress = (state: WalkState): PressView | null => {
  if (state.press !== null) return viewOf(state, state.press, false);
  const { lastPress, contact, question, t } = state;
  if (lastPress !== null && state.alone !== null) return viewOf(state, lastPress.stage, true);
  if (lastPress === null || contact.touch !== null || question !== null) return null;
  return t - lastPress.endedT > outcomeForS ? null : viewOf(state, lastPress.stage, true);
};

/** The limits between which a press test's readings are shown: the line's own, or those learned before it. */
export const pressBounds = (
  state: WalkState,
  { pin, test }: PressStage,
): { readonly nominal: number; readonly low: number; readonly high: number } | null => {
  const expected = state.plan.pins[indexOfPin(state, pin)]?.expected ?? null;
  if (expected !== null && expected !== 'overload') return expected;
  if (test === null || test.band === null) return null;
  const { low, high } = test.band;
  return { nominal: (low + high) / 2, low, high };
};

const viewOf = (state: WalkState, stage: PressStage, ended: boolean): PressView => {
  const { test } = stage;
  const name = sideNames(state.pins[indexOfPin(state, stage.pin)]?.verdict);
  const places = placesOf(stage, ended);
  const own = test?.windows ?? [];
  return {
    pin: cleanText(stage.pin, 40),
    line: cleanText(stage.line, 40),
    prompt: ended ? 'done' : promptOf(stage),
    here: places.find(({ stands }) => stands === 'now'),
    places,
    cycle: Math.min(mostCycles, Math.floor(own.length / 2) + 1),
    windows: windowsOf(stage, name),
    tally: tallyOf(own, name),
    latest: places.findLast(({ stands }) => stands === 'done'),
    compared: stage.compared,
    free:
      stage.free === null ? null : { changes: stage.free.changes, pressing: stage.free.pressing },
    traced: stage.traced,
  };
};

const promptOf = ({ free, test }: PressStage): PressPrompt => {
  if (free === null) return test?.cue?.cue ?? 'hold-still';
  if (free.told === null) return 'hold-still';
  return free.told ? 'reads' : 'open';
};

const placesOf = (
  { parts, pressed, place, free }: PressStage,
  ended: boolean,
): readonly PlaceView[] => {
  if (free !== null) {
    const stands = ended ? 'done' : 'now';
    return [{ place: named(place), sham: false, stands, result: null }];
  }
  const done = pressed.map(
    (one): PlaceView => ({
      place: named(one.place),
      sham: one.sham,
      stands: 'done',
      result: one.result,
    }),
  );
  if (ended) return done;
  const planned = parts.length === 0 ? [null] : parts;
  const left = planned.slice(pressed.length);
  const coming = left.length > 0 ? left : place === shamPlace ? [shamPlace] : [];
  return [
    ...done,
    ...coming.map(
      (one, at): PlaceView => ({
        place: named(one),
        sham: one === shamPlace,
        stands: at === 0 ? 'now' : 'next',
        result: null,
      }),
    ),
  ];
};

const named = (place: string | null): string | null =>
  place === null ? null : cleanText(place, 40);

/** All windows of the test so far, the places judged already included. */
const windowsOf = ({ pressed, test }: PressStage, name: NameSide): readonly SeenWindow[] => {
  const earlier = pressed.flatMap(({ result }) =>
    result.judged.flatMap(({ press, release }) => [press, release]),
  );
  const firstOfEarlier = new Set(earlier.map(({ fromS }) => fromS));
  const own = (test?.windows ?? []).filter(({ fromS }) => !firstOfEarlier.has(fromS));
  const closed = [...earlier, ...own].map(
    ({ cue, fromS, toS, side }): SeenWindow => ({ cue, fromS, toS, shown: name(side) }),
  );
  const cue = test?.cue ?? null;
  return cue === null ? closed : [...closed, { ...cue, toS: null, shown: null }];
};

type NameSide = (side: Side | null) => Shown;

/** A line that reads too low is not short, and one that reads too high is not open. */
const sideNames =
  (verdict: Verdict | undefined): NameSide =>
  (side) => {
    switch (side) {
      case 'above':
        return verdict === 'high' ? 'high' : 'open';
      case 'below':
        return verdict === 'low' ? 'low' : 'short';
      case 'normal':
        return 'normal';
      case null:
        return 'unclear';
    }
  };

const nothingShown: Readonly<Record<Shown, number>> = {
  normal: 0,
  open: 0,
  high: 0,
  short: 0,
  low: 0,
  unclear: 0,
};

const tallyOf = (windows: readonly CueWindow[], name: NameSide): WindowTally => {
  const tally = { press: { ...nothingShown }, release: { ...nothingShown } };
  for (const { cue, side } of windows) tally[cue][name(side)] += 1;
  return tally;
};

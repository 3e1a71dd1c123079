// The press test inside a walk: one place after another, each with its planned cues, and at the end all held
// against each other. Only folds; what comes next is decided elsewhere.
import type { EventOf } from '../events.js';
import type { Input } from '../inputs.js';
import type { Plan } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { PressedPlace } from './compare-parts.js';
import { beginFree, type FreeStage, takeInFree } from './free-stage.js';
import type { PressResult } from './press-result.js';
import { setupForLine } from './press-setup.js';
import { createPressTest, type PressTest, pressStep } from './press-test.js';

/** What the sham place is called in events: bare board, pressed for comparison. */
export const shamPlace = 'bare-board';

export interface PressStage {
  readonly pin: string;
  readonly line: string;
  /** Parts along the line in order; empty where the profile knows none. */
  readonly parts: readonly string[];
  /** The place under the tool; null before the first, and where no part is named. */
  readonly place: string | null;
  readonly test: PressTest | null;
  readonly cues: EventOf<'press-moved'>['cues'];
  /** How many of the cues were given. */
  readonly given: number;
  /** The result of the present place, once there is one. */
  readonly result: PressResult | null;
  readonly pressed: readonly PressedPlace[];
  /** Present where the technician presses at will. */
  readonly free: FreeStage | null;
  /** What a free test came to, once it is over. */
  readonly traced: EventOf<'press-traced'> | null;
  /** What all places together say, once they are compared. */
  readonly compared: EventOf<'press-compared'> | null;
}

/** The parts worth pressing on a line: those along its way, in order from the pin, each once. */
export const partsToPress = (profile: Profile, line: string): readonly string[] => {
  const chain = profile.lines[line]?.chain ?? [];
  const along = chain.flatMap((stop) => ('part' in stop ? [stop.part] : []));
  const touching = Object.entries(profile.parts ?? {}).flatMap(([part, { lines }]) =>
    chain.length === 0 && lines.includes(line) ? [part] : [],
  );
  return [...new Set([...along, ...touching])];
};

export const beginPress = (begun: EventOf<'press-begun'>, plan: Plan): PressStage => ({
  pin: begun.pin,
  line: begun.line,
  parts: begun.places,
  place: begun.free === true ? onlyPlace(begun.places) : null,
  test: null,
  cues: [],
  given: 0,
  result: null,
  pressed: [],
  free:
    begun.free === true ? beginFree(setupForLine(plan, begun.line, onlyPlace(begun.places))) : null,
  traced: null,
  compared: null,
});

/** Pressed at will, a place has a name only where it is the only one. */
const onlyPlace = ([place, ...others]: readonly string[]): string | null =>
  place === undefined || others.length > 0 ? null : place;

export const moveTo = (
  stage: PressStage,
  plan: Plan,
  moved: EventOf<'press-moved'>,
): PressStage => ({
  ...stage,
  place: moved.place,
  test: createPressTest(setupForLine(plan, stage.line, moved.place)),
  cues: moved.cues,
  given: 0,
  result: null,
});

/** Takes a reading or a cue of the test under way. */
export const takeInPress = (stage: PressStage, input: Input): PressStage => {
  if (stage.free !== null) return { ...stage, free: takeInFree(stage.free, input) };
  if (stage.test === null) return stage;
  const { state: test, result } = pressStep(stage.test, input);
  return {
    ...stage,
    test,
    given: stage.given + (input.kind === 'cue' ? 1 : 0),
    result: result ?? stage.result,
  };
};

export const keepResult = (stage: PressStage): PressStage =>
  stage.result === null
    ? stage
    : {
        ...stage,
        pressed: [
          ...stage.pressed,
          { place: stage.place, sham: stage.place === shamPlace, result: stage.result },
        ],
      };

/**
 * Whether a cue only closed the last window of a place: the tool is off already, and nobody need be told.
 * @param press the stage after everything decided with the cue.
 */
export const isClosing = (
  { cue, place }: EventOf<'cue-given'>,
  press: PressStage | null,
): boolean => place !== undefined && cue === 'release' && (press?.test?.cue ?? null) === null;

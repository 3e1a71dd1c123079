// The likeliest course of a line that switches between contact and none, from readings some of which are
// wrong. Refuses nothing: no readings, no segments.

export interface Sighting {
  readonly t: number;
  readonly contact: boolean;
}

export interface Segment {
  readonly contact: boolean;
  /** Times of its first and last reading. */
  readonly fromS: number;
  readonly toS: number;
  readonly readings: number;
}

/** Changes a second, either way, of someone pressing at will. Common practice, no source. */
const changesPerS = 0.5;
/** Share of readings that show the other state: bounce, a mixed period. Common practice, no source. */
const wrongShare = 0.05;

/** Log chance that the state is the other one, or the same, `gapS` later: a symmetric two-state Markov process. */
const logSwitch = (gapS: number): readonly [stay: number, change: number] => {
  const fade = Math.exp(-2 * changesPerS * gapS);
  return [Math.log((1 + fade) / 2), Math.log(Math.max((1 - fade) / 2, Number.MIN_VALUE))];
};

/**
 * Viterbi (1967) over a two-state Markov process in continuous time (Rabiner 1989; both from memory). What
 * counts as a bounce follows from the meter's rate: at 2.5 readings/s one odd reading, at 50 up to three.
 * @param sightings in order of time.
 */
export const segmentTrace = (sightings: readonly Sighting[]): Segment[] => {
  const course = likeliestCourse(sightings);
  const segments: Segment[] = [];
  sightings.forEach(({ t }, i) => {
    const contact = course[i] === 1;
    const last = segments.at(-1);
    if (last !== undefined && last.contact === contact) {
      segments[segments.length - 1] = { ...last, toS: t, readings: last.readings + 1 };
    } else segments.push({ contact, fromS: t, toS: t, readings: 1 });
  });
  return segments;
};

type State = 0 | 1;

const likeliestCourse = (sightings: readonly Sighting[]): State[] => {
  const right = Math.log(1 - wrongShare);
  const wrong = Math.log(wrongShare);
  let score: readonly [number, number] = [0, 0];
  /** For each reading and each state, the state before it on the likeliest way there. */
  const cameFrom: (readonly [State, State])[] = [];
  sightings.forEach(({ t, contact }, i) => {
    const [stay, change] = logSwitch(t - (sightings[i - 1]?.t ?? t));
    const from = (state: State): State => {
      const other = (1 - state) as State;
      return score[state] + stay >= score[other] + change ? state : other;
    };
    const shows = (state: State): number => (contact === (state === 1) ? right : wrong);
    const step = (state: State, before: State): number =>
      score[before] + (before === state ? stay : change) + shows(state);
    const came = [from(0), from(1)] as const;
    score = [step(0, came[0]), step(1, came[1])];
    cameFrom.push(came);
  });
  const course: State[] = [];
  let state: State = score[1] > score[0] ? 1 : 0;
  for (let i = sightings.length - 1; i >= 0; i -= 1) {
    course[i] = state;
    state = (cameFrom[i] as readonly [State, State])[state];
  }
  return course;
};

// What lies between two captures: how long the probe was off, as far as the readings show it, and which touches
// came to nothing. Whether it was a slip or a lift is judged elsewhere.

export interface Gap {
  /** The capture that was left, or null. */
  readonly of: number | null;
  /** The level the probe left and when it last read that, or null where nothing is known of it. */
  readonly level: number | null;
  readonly leftT: number | null;
  /** Longest run of overload, seconds; null where nobody watched. */
  readonly offS: number | null;
  /** Seconds of blank display beside that: the meter ranging, with or without contact. */
  readonly blankS: number;
  /** Share of the reading at departure in which the probe was off already. */
  readonly departing: number;
  readonly brush: Brush | null;
}

/** The longest touch that was not captured. */
export interface Brush {
  readonly spanS: number;
  /** What it read last. */
  readonly value: number;
  /** Longest run of overload since, seconds. */
  readonly offS: number;
}

/** Nothing is known of what came before. */
export const unknownGap: Gap = {
  of: null,
  level: null,
  leftT: null,
  offS: null,
  blankS: 0,
  departing: 0,
  brush: null,
};

/** The probe has just left a captured level; `odd` is what it read last, if that was something else. */
export const beginGap = (
  of: number | null,
  level: number,
  leftT: number,
  odd: number | null,
): Gap => ({
  of,
  level,
  leftT,
  offS: 0,
  blankS: 0,
  departing: odd === null ? 0 : offShare(level, odd),
  brush: null,
});

/** A run of overload has ended. */
export const withRun = (gap: Gap, runS: number): Gap => {
  const { offS, brush } = gap;
  return {
    ...gap,
    offS: offS === null ? null : Math.max(offS, runS),
    brush: brush === null ? null : { ...brush, offS: Math.max(brush.offS, runS) },
  };
};

/** A touch has ended without a capture. */
export const withBrush = (gap: Gap, spanS: number, value: number): Gap =>
  spanS <= (gap.brush?.spanS ?? 0) ? gap : { ...gap, brush: { spanS, value, offS: 0 } };

/**
 * The share of a reading in which the probe was off, from how far it lies above the level: a meter that means
 * over its period reads more where contact was broken. An estimate of the right size, no more.
 */
export const offShare = (level: number, reading: number): number =>
  reading <= 1.04 * level ? 0 : Math.min(0.9, 1 - level / reading);

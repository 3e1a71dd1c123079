// The meter's side: integrates what the probe touches over each period, rounds to counts, ranges, and adds
// noise and drift. A period in which contact was broken gives an odd value or an overload, as real ones do.
import type { MeasureFunction, Reading } from '../../../src/core/reading.js';
import type { Random } from '../shared/random.js';
import { scaleFor, shown } from './full-scales.js';
import type { MeterLaws } from './mixture.js';
import { forgetsRangeS, type Piece } from './probe-hand.js';
import type { Contact, Meter } from './walk-truth.js';

const stepS = 0.002;
/** A display mean counts broken contact as this much over full scale. */
const brokenReads = 1.15;

/** What one period saw, before the display. */
interface Sample {
  readonly end: number;
  readonly touched: number;
  /** Mean value over the touched part, and mean conductance over all of the period. */
  readonly meanValue: number;
  readonly meanConductance: number;
  /** Settled value of the last stretch touched in this period. */
  readonly base: number;
  /** When the meter began to range for it. */
  readonly rangingFrom: number;
}

const valueAt = (piece: Piece, t: number): number =>
  Math.max(
    1e-9,
    piece.swings.reduce(
      (sum, { amount, tauS }) => sum + amount * Math.exp((piece.start - t) / tauS),
      piece.base,
    ),
  );

/** For each piece, when the meter last began to range: at the first contact after a long enough break. */
const rangingStarts = (pieces: readonly Piece[]): readonly number[] => {
  let from = Number.NEGATIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  return pieces.map((piece) => {
    if (piece.start - end >= forgetsRangeS) from = piece.start;
    end = piece.end;
    return from;
  });
};

function* samples(
  pieces: readonly Piece[],
  meter: Meter,
  end: number,
  random: Random,
): Generator<Sample> {
  const starts = rangingStarts(pieces);
  const period = 1 / meter.rate;
  const window = period * meter.aperture;
  const steps = Math.max(5, Math.ceil(window / stepS));
  let first = 0;
  for (let t = random.unit() * period; t < end; t += period) {
    const stop = t + period * 0.01 * random.uniform([-1, 1]);
    while ((pieces[first]?.end ?? Number.POSITIVE_INFINITY) < stop - window) first += 1;
    let touched = 0;
    let sum = 0;
    let conductance = 0;
    let at = first;
    let last = -1;
    for (let step = 0; step < steps; step += 1) {
      const now = stop - window + ((step + 0.5) * window) / steps;
      while ((pieces[at]?.end ?? Number.POSITIVE_INFINITY) < now) at += 1;
      const piece = pieces[at];
      if (piece === undefined || piece.start > now) continue;
      const value = valueAt(piece, now);
      touched += 1;
      sum += value;
      conductance += 1 / value;
      last = at;
    }
    yield {
      end: stop,
      touched: touched / steps,
      meanValue: touched === 0 ? 0 : sum / touched,
      meanConductance: conductance / steps,
      base: pieces[last]?.base ?? 0,
      rangingFrom: starts[last] ?? 0,
    };
  }
}

/** The mean a meter of this kind forms, or null for overload. */
const integrated = (sample: Sample, meter: Meter): number | null => {
  const { touched, meanValue, base } = sample;
  const top = meter.overAt ?? meter.fullScales.at(-1) ?? 0;
  if (touched === 0) return null;
  if (meter.means === 'conductance') {
    const value = 1 / sample.meanConductance;
    return touched < 0.1 || value > top ? null : value;
  }
  const scale = meter.overAt ?? scaleFor(meter.fullScales, base);
  const value = touched * meanValue + (1 - touched) * brokenReads * scale;
  return value > top || (touched < 0.98 && value > scale) ? null : value;
};

/** Full scale in use: while a coarse meter ranges it comes down one decade after another. */
const scaleInUse = (sample: Sample, meter: Meter, value: number): number => {
  const fit = scaleFor(meter.fullScales, value);
  const passed = (sample.end - sample.rangingFrom) / meter.rangingS;
  if (meter.ranging !== 'coarse' || passed >= 1) return fit;
  const top = meter.fullScales.length - 1;
  const down = Math.floor(passed * (top - meter.fullScales.indexOf(fit)));
  return meter.fullScales[top - down] ?? fit;
};

const noiseStream = (law: MeterLaws['noiseLaw'], random: Random): (() => number) => {
  const pull = 0.7;
  let state = random.normal();
  return () => {
    const fresh = random.normal();
    if (law === 'heavy-tailed') return random.chance(0.05) ? 4 * fresh : fresh;
    if (law === 'gaussian') return fresh;
    state = pull * state + Math.sqrt(1 - pull * pull) * fresh;
    return state;
  };
};

/** Moments at which a ranging meter shows one wrong reading in the middle of a hold. */
const glitchTimes = (
  contacts: readonly Contact[],
  meter: Meter,
  laws: MeterLaws,
  random: Random,
): number[] =>
  meter.ranging === 'unseen'
    ? []
    : contacts
        .filter(
          ({ touch, seen }) => touch === 'hold' && seen !== null && random.chance(laws.glitches),
        )
        .map(({ start, end }) => random.uniform([start + 0.1, end]));

export const readContacts = (
  pieces: readonly Piece[],
  contacts: readonly Contact[],
  end: number,
  meter: Meter,
  laws: MeterLaws,
  measure: MeasureFunction,
  random: Random,
): readonly Reading[] => {
  const noise = noiseStream(laws.noiseLaw, random.fork('noise'));
  const glitches = glitchTimes(contacts, meter, laws, random.fork('glitches'));
  const odd = random.fork('odd');
  const delayS = random.uniform([0, 0.02]);
  const { drift } = meter;
  const readings: Reading[] = [];
  let held: { t: number; reading: (t: number) => Reading }[] = [];
  const display = (sample: Sample): ((t: number) => Reading) => {
    const overload = (t: number): Reading => ({ t, function: measure, overload: true });
    const blank = (t: number): Reading => ({ t, function: measure, blank: true });
    const mean = integrated(sample, meter);
    const raw = noise();
    const step = odd.normal();
    if (mean === null) return overload;
    if (sample.end - sample.rangingFrom < meter.rangingS) {
      if (meter.ranging === 'overload') return overload;
      if (meter.ranging === 'blank') return blank;
    }
    const slow =
      drift.amplitude * Math.sin((2 * Math.PI * sample.end) / drift.periodS + drift.phase);
    let value = mean * (1 + meter.gain + slow + meter.noise * raw);
    if (sample.end >= (glitches[0] ?? Number.POSITIVE_INFINITY)) {
      glitches.shift();
      const kind = odd.unit();
      if (kind < 0.4) return overload;
      if (kind < 0.6) return blank;
      value *= odd.uniform([0.5, 1.8]);
    }
    const scale = scaleInUse(sample, meter, value);
    const resolution = scale / meter.counts;
    value = Math.max(0, value + resolution * (meter.offsetCounts + 0.3 * step));
    return (t) => ({
      t,
      function: measure,
      value: shown(value, resolution),
      ...(meter.tells === 'range' ? { range: scale } : {}),
      ...(meter.tells === 'nothing' ? {} : { resolution: Number(resolution.toPrecision(6)) }),
    });
  };
  for (const sample of samples(pieces, meter, end, random.fork('samples'))) {
    held.push({ t: sample.end + delayS, reading: display(sample) });
    if (held.length < meter.burst) continue;
    const t = Number((held.at(-1)?.t ?? 0).toFixed(3));
    for (const { reading } of held) readings.push(reading(t));
    held = [];
  }
  return readings;
};

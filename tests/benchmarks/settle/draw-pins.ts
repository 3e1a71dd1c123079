// Draws what is true at each pin of a layout: its condition, its value and the verdicts that are right.
// A value that this meter shows within its accuracy of a limit is drawn only where that is wanted, so that a
// program cannot be blamed for what no meter could tell.
import type { Profile, ProfileLine } from '../../../src/core/profile/profile-format.js';
import type { Random } from '../shared/random.js';
import { behind, resolutionAt, seenBy } from './draw-meter.js';
import { ohmScales, scaleFor } from './full-scales.js';
import { limitsOf, rightVerdicts, shortLimitOf } from './judge-truth.js';
import type { BoardLaws } from './mixture.js';
import type { Condition, Meter, PinTruth, ToldAccuracy } from './walk-truth.js';

interface Scene {
  readonly laws: BoardLaws;
  readonly meter: Meter;
  readonly told: ToldAccuracy;
  readonly random: Random;
}

/** Half-width of what the program must believe about a reading: 0.5 % + 3 counts of what it knows. */
const doubt = ({ laws, meter, told }: Scene, value: number): number => {
  const own = resolutionAt(meter, value);
  const assumed = laws.function === 'diode' ? 1e-3 : scaleFor(ohmScales(6_000), value) / 6_000;
  return 0.005 * value + 3 * (told === null ? Math.max(own, assumed) : own);
};

const clearOfLimits = (scene: Scene, line: ProfileLine, value: number): boolean =>
  limitsOf(line, scene.laws.function).every((limit) => {
    const away = Math.abs(seenBy(scene.meter, value) - limit);
    return away > 1.6 * doubt(scene, limit) + 2 * resolutionAt(scene.meter, limit);
  });

/** Tries draws until one is clear of every limit; null when the meter is too coarse for this line. */
const clearDraw = (scene: Scene, line: ProfileLine, draw: () => number): number | null => {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const value = draw();
    if (clearOfLimits(scene, line, value)) return value;
  }
  return null;
};

const drawCondition = (line: ProfileLine, scene: Scene, shared: boolean): Condition => {
  const { laws, random } = scene;
  const { open, short, leaky, raised, nearLimit, onLimit } = laws.faults;
  const u = random.unit();
  if (line.expect?.[laws.function] === 'overload')
    return u < 0.1 ? 'value-where-none-belongs' : 'expected-overload';
  if (u < open) return 'open';
  if (shared) return 'healthy';
  if (u < open + short) return 'short';
  if (u < open + short + leaky) return 'leaky';
  if (u < open + short + leaky + raised) return 'raised';
  if (line.kind !== 'signal') return 'healthy';
  if (u < open + short + leaky + raised + nearLimit) return 'near-limit';
  return u < open + short + leaky + raised + nearLimit + onLimit ? 'on-limit' : 'healthy';
};

const drawValue = (line: ProfileLine, condition: Condition, scene: Scene): number | null => {
  const { laws, meter, random } = scene;
  const expected = line.expect?.[laws.function];
  if (condition === 'open' || condition === 'expected-overload') return null;
  if (line.kind === 'ground') return random.uniform(laws.ground);
  if (condition === 'value-where-none-belongs' || expected === undefined || expected === 'overload')
    return random.logUniform(laws.signal);
  const { nominal, tolerance } = expected;
  const limit = nominal * (1 + (random.chance(0.5) ? tolerance : -tolerance));
  const side = random.chance(0.5) ? 1 : -1;
  switch (condition) {
    case 'short':
      return random.logUniform([laws.short[0], Math.min(laws.short[1], 0.9 * shortLimitOf(line))]);
    case 'leaky':
      return nominal * (1 - tolerance) * random.uniform([0.35, 0.95]);
    case 'raised':
      return nominal * (1 + tolerance) * random.uniform([1.05, 2.5]);
    case 'near-limit':
      return behind(
        meter,
        limit + side * (1.6 * doubt(scene, limit) + random.uniform([0.01, 0.03]) * limit),
      );
    case 'on-limit':
      return behind(meter, limit + random.uniform([-0.2, 0.2]) * doubt(scene, limit));
    default:
      return nominal * (1 + tolerance * Math.max(-0.7, Math.min(0.7, 0.3 * random.normal())));
  }
};

const endsBy = (
  condition: Condition,
  verdict: string | undefined,
  saysNext: boolean,
): PinTruth['ends'] => {
  if (condition === 'open' || condition === 'expected-overload') return 'open';
  if (verdict === 'normal' && condition !== 'on-limit') return 'one-touch';
  return saysNext ? 'next' : 'two-touches';
};

export const drawPins = (
  profile: Profile,
  laws: BoardLaws,
  saysNext: number,
  meter: Meter,
  told: ToldAccuracy,
  random: Random,
): readonly PinTruth[] => {
  const scene: Scene = { laws, meter, told, random };
  const uses = new Map<string, number>();
  for (const { line } of profile.connector.pins) uses.set(line, (uses.get(line) ?? 0) + 1);
  const shared = new Map<string, number | null>();
  return profile.connector.pins.map(({ pin, line: name }) => {
    const line = profile.lines[name];
    if (line === undefined) throw new Error(`the layout has no line ${name}`);
    const many = (uses.get(name) ?? 1) > 1;
    let condition = drawCondition(line, scene, many);
    const same = condition === 'healthy' && line.kind !== 'ground' ? shared.get(name) : undefined;
    let value = same ?? drawValue(line, condition, scene);
    if (same === undefined && value !== null && condition !== 'on-limit') {
      value = clearDraw(scene, line, () => drawValue(line, condition, scene) ?? 0);
      if (value === null) {
        condition = 'healthy';
        value = clearDraw(scene, line, () => drawValue(line, 'healthy', scene) ?? 0);
        value ??= drawValue(line, 'healthy', scene);
      }
    }
    if (condition === 'healthy') shared.set(name, value);
    const right = rightVerdicts(line, laws.function, value);
    const ends = endsBy(condition, right[0], random.chance(saysNext));
    return { pin, line: name, kind: line.kind, condition, value, right, ends };
  });
};

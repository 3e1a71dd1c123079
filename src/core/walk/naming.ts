// Which pin each of the latest captures belongs to, over all ways.
import { type Alignment, type Entry, type Role, type Way, waitsFor } from './ways.js';

export interface Naming {
  readonly capture: number;
  readonly index: number;
  /** How the capture relates to that pin, in the likeliest way that puts it there. */
  readonly role: Role;
  /** Probability of this pin for this capture. */
  readonly probability: number;
}

/** Probability over all ways with which a capture's pin, or the walk's place, counts as known (design decision). */
export const surelyNamed = 0.98;
/** Captures further back than this are not named anew. */
const deepest = 60;

/** Ways less probable than this beside the likeliest one change no name. */
const negligible = Math.log(1e-5);
/** Where all ways more probable than this have come to the same entry, the names before it are known. */
const counts = 5e-3;

/**
 * The captures on which the ways still differ, newest first, and the first one on which they agree. Every way has
 * an entry for every capture, so that their books are read side by side; where all have come to the same entry,
 * everything before it is agreed on.
 */
export const nameCaptures = (alignment: Alignment): readonly Naming[] => {
  const ways = alignment.filter(({ weight }) => weight > negligible);
  const weights = ways.map(({ weight }) => Math.exp(weight));
  const entries = ways.map(({ book }) => book);
  const namings: Naming[] = [];
  while (namings.length < deepest) {
    const naming = likeliest(entries, weights);
    if (naming === null) break;
    namings.push(naming);
    const [first] = entries;
    let agreed = true;
    for (let i = 0; i < entries.length; i += 1) {
      if (entries[i] !== first && (weights[i] as number) > counts) agreed = false;
      entries[i] = entries[i]?.before ?? null;
    }
    if (agreed) break;
  }
  return namings;
};

const likeliest = (
  entries: readonly (Entry | null)[],
  weights: readonly number[],
): Naming | null => {
  let total = 0;
  let most = 0;
  let found: Entry | null = null;
  for (let i = 0; i < entries.length; i += 1) {
    const entry = entries[i] ?? null;
    if (entry === null) continue;
    total += weights[i] as number;
    // The likeliest way that puts the capture somewhere speaks for all that put it there.
    if (found?.index === entry.index) continue;
    let sum = 0;
    for (let j = i; j < entries.length; j += 1) {
      if (entries[j]?.index === entry.index) sum += weights[j] as number;
    }
    if (sum > most) [found, most] = [entry, sum];
  }
  return found === null
    ? null
    : { capture: found.capture, index: found.index, role: found.role, probability: most / total };
};

/** The naming of one capture among these, or as all ways agree on it; null where it is forgotten. */
export const findNaming = (
  namings: readonly Naming[],
  alignment: Alignment,
  capture: number,
): Naming | null => {
  const [newest] = namings;
  if (newest === undefined || capture > newest.capture) return null;
  const known = namings[newest.capture - capture];
  if (known !== undefined) return known;
  for (let entry = alignment[0]?.book ?? null; entry !== null; entry = entry.before) {
    if (entry.capture === capture) return { ...entry, probability: 1 };
  }
  return null;
};

export interface Standing {
  /** The place that is waited for, the number of pins when all are done. */
  readonly at: number;
  /** Probability that it is this place. */
  readonly share: number;
  /** True when it is known, and with it the pin that was read last. */
  readonly sure: boolean;
}

/** Where the walk stands, over all ways. */
export const standingOf = (alignment: Alignment): Standing => {
  const likeliestWay = alignment[0] as Way;
  const at = waitsFor(likeliestWay);
  let here = 0;
  let same = 0;
  let total = 0;
  for (const way of alignment) {
    const weight = Math.exp(way.weight);
    total += weight;
    if (waitsFor(way) === at) here += weight;
    if (way.index === likeliestWay.index) same += weight;
  }
  return { at, share: here / total, sure: Math.min(here, same) >= surelyNamed * total };
};

// Promises how far lines depart in common as far as they tell, and whether that is more than chance and more than
// one group: one group that differs from the others is never taken for it. Refuses nothing.
import { median } from '../numbers/median.js';
import { robustScale } from './robust-scale.js';

export interface LineDeparture {
  /** Lines of one group stand or fall together: they hang on the same parts. */
  readonly group: string;
  /** Measured less expected, in a coordinate in which a shift is added. */
  readonly departure: number;
  /** How far a good board's line may depart, in the same coordinate. */
  readonly tolerance: number;
  readonly pins: number;
}

export interface CommonDeparture {
  readonly departure: number;
  readonly standardUncertainty: number;
  /** Pins and groups that agree with it. */
  readonly pins: number;
  readonly groups: number;
  /** Several independent groups have it in common. */
  readonly isShared: boolean;
  /** They have, and it is more than chance. */
  readonly isCommon: boolean;
}

/** A tolerance is taken as three standard deviations of a good board's line, of which its group shares a part. */
const linePart = 1 / 3;
const groupPart = 1 / 5;

/** What makes a departure more than chance: this many times its uncertainty, and this share of a tolerance. */
const significance = 3;
const leastOfTolerance = 0.2;
const leastPins = 5;
/** Groups this much further apart than on good boards have nothing in common. */
const mostScatter = 1.5;
/** Beyond this many deviations a line or a group does not agree. */
const reach = 2.5;
/** Tukey's constant, in deviations: 95 % efficient on normal data. */
const weightless = 4.685;
const mostRounds = 30;
/** An estimate that moves by less from round to round has come to rest. */
const stillness = 1e-7;

interface Group {
  readonly departure: number;
  /** Expected standard deviation of the group's middle line on a good board. */
  readonly deviation: number;
  readonly pins: number;
  readonly lines: readonly LineDeparture[];
}

/**
 * An M-estimate of location with Tukey's biweight over the groups' middle lines, begun at their median (Beaton
 * and Tukey 1974; Huber, Robust Statistics, 1981; both from memory). Its scale is what the tolerances let
 * expect, corrected by what is seen; its standard uncertainty is that of the weighted mean, widened to the
 * standard deviation of Student's t as JCGM 101:2008, 6.4.9.4 (from memory) does for few values. For it to be
 * common, more than two thirds of all groups must agree.
 *
 * @param leastGroups how many groups must agree at the least
 * @returns null where there is no line to go by.
 * @example three groups of four at 0.058 with tolerances of 0.1: 0.058, common; two of them, and one at 0: not.
 */
export function commonDeparture(
  lines: readonly LineDeparture[],
  leastGroups: number,
): CommonDeparture | null {
  const all = groupsOf(lines);
  if (all.length === 0) return null;
  let centre = median(all.map(({ departure }) => departure));
  let fit = fitAround(centre, lines, all);
  for (let round = 0; fit !== null && round < mostRounds; round += 1) {
    const moved = Math.abs(fit.centre - centre);
    centre = fit.centre;
    if (moved < stillness) break;
    fit = fitAround(centre, lines, all);
  }
  if (fit === null) return null;
  const { scatter, uncertainty } = fit;
  const agreeing = fit.groups.filter(
    ({ departure, deviation }) => Math.abs(departure - centre) <= reach * scatter * deviation,
  );
  const pins = sum(agreeing.map((group) => group.pins));
  const least = Math.max(
    significance * uncertainty,
    leastOfTolerance * median(lines.map(({ tolerance }) => tolerance)),
  );
  const isShared =
    scatter <= mostScatter &&
    agreeing.length >= leastGroups &&
    3 * agreeing.length > 2 * all.length &&
    pins >= leastPins;
  return {
    departure: centre,
    standardUncertainty: uncertainty,
    pins,
    groups: agreeing.length,
    isShared,
    isCommon: isShared && Math.abs(centre) >= least,
  };
}

interface Fit {
  readonly centre: number;
  readonly uncertainty: number;
  /** How far groups lie apart, as a multiple of what is expected. */
  readonly scatter: number;
  readonly groups: readonly Group[];
}

/** One reweighting step; null when nothing is near the centre. */
const fitAround = (
  centre: number,
  lines: readonly LineDeparture[],
  all: readonly Group[],
): Fit | null => {
  const lineScatter = robustScale(
    lines.map(({ departure, tolerance }) => (departure - centre) / (linePart * tolerance)),
    1,
  );
  const groups = all
    .map((group) => nearPart(group, centre, lineScatter))
    .filter((group) => group !== null);
  const scores = groups.map(({ departure, deviation }) => (departure - centre) / deviation);
  // A group's own lines tell half of how far groups will scatter; the tolerances tell the other half.
  const scatter = robustScale(scores, Math.hypot(lineScatter, 1) / Math.SQRT2);
  const weights = groups.map(
    ({ deviation }, at) => biweight((scores[at] ?? 0) / scatter) / deviation ** 2,
  );
  const weight = sum(weights);
  if (weight === 0) return null;
  return {
    centre: sum(groups.map(({ departure }, at) => departure * (weights[at] ?? 0))) / weight,
    uncertainty: (scatter * widthOfT(3 + groups.length)) / Math.sqrt(weight),
    scatter,
    groups,
  };
};

/** Without lines too far from the centre to be good ones; null for a group that is mostly such lines. */
const nearPart = (group: Group, centre: number, scatter: number): Group | null => {
  const { lines } = group;
  const isNear = ({ departure, tolerance }: LineDeparture): boolean =>
    Math.abs(departure - centre) <= reach * scatter * linePart * tolerance;
  if (lines.every(isNear)) return group;
  const near = lines.filter(isNear);
  return 2 * near.length > lines.length ? groupOf(near) : null;
};

const groupsOf = (lines: readonly LineDeparture[]): readonly Group[] => {
  const members = new Map<string, LineDeparture[]>();
  for (const line of lines) {
    const known = members.get(line.group);
    if (known === undefined) members.set(line.group, [line]);
    else known.push(line);
  }
  return [...members.values()].map(groupOf);
};

const groupOf = (lines: readonly LineDeparture[]): Group => {
  const own = (linePart ** 2 - groupPart ** 2) / lines.length;
  return {
    departure: median(lines.map(({ departure }) => departure)),
    deviation: Math.sqrt(groupPart ** 2 + own) * median(lines.map(({ tolerance }) => tolerance)),
    pins: sum(lines.map(({ pins }) => pins)),
    lines,
  };
};

const biweight = (z: number): number =>
  Math.abs(z) < weightless ? (1 - (z / weightless) ** 2) ** 2 : 0;

/** Standard deviation of Student's t. */
const widthOfT = (degreesOfFreedom: number): number =>
  Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2));

const sum = (values: readonly number[]): number => values.reduce((total, x) => total + x, 0);

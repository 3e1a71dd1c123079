// Counts what was found against what is true, and holds it against the reach. Refuses an empty run.
import { type PressFinding, pressFindings } from '../../../src/core/press/decide-press.js';
import { type Proportion, proportion } from '../shared/proportion.js';
import { quantile } from '../shared/quantile.js';
import { isFalseAlarm, type PressKind, rightFinding } from './press-kinds.js';

/** What one trial comes to. */
export interface PressOutcome {
  readonly kind: PressKind;
  readonly finding: PressFinding;
  readonly cycles: number;
  readonly lastsS: number;
  readonly naive: 'loose' | 'not loose';
}

export interface PressScore {
  readonly kind: PressKind;
  readonly found: Readonly<Record<PressFinding, number>>;
  /** Share with the right finding; null where none is asked for. */
  readonly right: Proportion | null;
  /** Share named loose, cracked or bridged although it is not. */
  readonly falseAlarms: Proportion;
  /** Share the naive rule calls loose. */
  readonly naiveLoose: Proportion;
  readonly medianCycles: number;
  readonly medianS: number;
}

/** @throws RangeError for a kind without trials. */
export const scorePress = (kind: PressKind, all: readonly PressOutcome[]): PressScore => {
  const trials = all.filter((trial) => trial.kind === kind);
  const share = (counts: (trial: PressOutcome) => boolean): Proportion =>
    proportion(trials.filter(counts).length, trials.length);
  const right = rightFinding[kind];
  return {
    kind,
    found: Object.fromEntries(
      pressFindings.map((finding) => [
        finding,
        trials.filter((trial) => trial.finding === finding).length,
      ]),
    ) as Record<PressFinding, number>,
    right: right === null ? null : share(({ finding }) => finding === right),
    falseAlarms: share(({ finding }) => isFalseAlarm(kind, finding)),
    naiveLoose: share(({ naive }) => naive === 'loose'),
    medianCycles: quantile(
      trials.map(({ cycles }) => cycles),
      0.5,
    ),
    medianS: quantile(
      trials.map(({ lastsS }) => lastsS),
      0.5,
    ),
  };
};

export const reach = { found: 0.995, falseAlarms: 0.001, medianCycles: 4 } as const;

/** Whatever of the reach is missed, in words; empty when all is met. */
export const missedReach = (scores: readonly PressScore[]): string[] => {
  const missed: string[] = [];
  for (const { kind, right, falseAlarms, medianCycles } of scores) {
    const isAsked = kind === 'loose' || kind === 'sticky';
    if (isAsked && right !== null && right.share < reach.found)
      missed.push(`${kind}: ${right.count} of ${right.of} found`);
    if (falseAlarms.share > reach.falseAlarms)
      missed.push(`${kind}: ${falseAlarms.count} of ${falseAlarms.of} false`);
    if (isAsked && medianCycles !== reach.medianCycles)
      missed.push(`${kind}: median ${medianCycles} cycles`);
  }
  return missed;
};

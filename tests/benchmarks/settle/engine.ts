// What the benchmark asks of a program: a profile and inputs in, events out. Two ways in: the walk's own
// modules in this process, and the built program reading files.
import type { Input } from '../../../src/core/inputs.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { assumedAccuracy, openLog, statedAccuracy } from '../../../src/core/walk/open-session.js';
import { rerun, toItsEnd } from '../../../src/core/walk/rerun.js';
import type { ScoredEvent } from './scored-event.js';
import type { ToldAccuracy } from './walk-truth.js';

export interface EngineOptions {
  /** Accuracy and counts of the meter; null leaves the program to its own assumption. */
  readonly accuracy: ToldAccuracy;
}

export type Engine = (
  profile: Profile,
  inputs: Iterable<Input>,
  options: EngineOptions,
) => readonly ScoredEvent[] | Promise<readonly ScoredEvent[]>;

/** The walk's modules in this process. */
export const inProcessEngine: Engine = (profile, inputs, { accuracy }) => {
  const stated = accuracy === null ? assumedAccuracy : statedAccuracy(accuracy);
  const opened = openLog({ content: profile, sha256: '' }, null, stated, 'log');
  return [...rerun(opened, toItsEnd(inputs))].filter(({ type }) => type !== 'reading-taken');
};

// Every mixture by name. More than one, so that nobody tunes the walk to a single set of laws.
import type { Mixture } from '../mixture.js';
import { common } from './common.js';
import { diode } from './diode.js';
import { hardBench } from './hard-bench.js';
import { slowHands } from './slow-hands.js';

export const mixtures: readonly Mixture[] = [common, slowHands, hardBench, diode];

/** @throws RangeError naming the known mixtures. */
export const mixtureNamed = (name: string): Mixture => {
  const found = mixtures.find((mixture) => mixture.name === name);
  if (found === undefined) {
    const known = mixtures.map((mixture) => mixture.name).join(', ');
    throw new RangeError(`no mixture "${name}"; known: ${known}`);
  }
  return found;
};

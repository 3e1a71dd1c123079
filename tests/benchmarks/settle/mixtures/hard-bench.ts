// A quick hand on a crowded connector where almost every line reads alike, with noise that has outliers,
// slips in which the probe rubs, and a link that hands over readings in bursts.
import type { Mixture } from '../mixture.js';
import { common } from './common.js';

export const hardBench: Mixture = {
  name: 'hard-bench',
  says: 'resistance, lines that read alike, heavy-tailed noise, rubbing slips, bursts',
  board: {
    ...common.board,
    pins: [40, 80],
    groundEvery: [8, 16],
    ground: [0.05, 0.9],
    signal: [380, 560],
    pairs: 0.7,
    pairsAlike: 0.9,
    tolerances: [0.1, 0.2, 0.25],
    expectedOverload: 0.05,
    faults: { open: 0.02, short: 0.01, leaky: 0.03, raised: 0.02, nearLimit: 0.01, onLimit: 0.005 },
  },
  creep: { ...common.creep, tauS: [0.01, 0.8], amplitude: [-0.8, 0.6] },
  hand: {
    ...common.hand,
    bounces: [2, 9],
    bounceGapS: [0.001, 0.02],
    landingExtra: [0.05, 3],
    slips: 0.2,
    rubShare: 0.3,
    neighbours: 0.1,
    liftMeanS: 0.35,
    hunts: 0.03,
    marginS: [1.3, 2.2],
    saysNext: 0.05,
  },
  meter: {
    ...common.meter,
    rates: [4, 5, 8, 15, 30, 50],
    counts: [6_000, 20_000, 60_000],
    noise: [0.0004, 0.003],
    noiseLaw: 'heavy-tailed',
    ranging: { overload: 0.1, blank: 0.2, coarse: 0.2 },
    glitches: 0.1,
    bursts: 0.25,
    told: 0.7,
  },
};

// A slow, careful technician with slow meters: longer lifts and hunts, correlated noise, a second creep.
import type { Mixture } from '../mixture.js';
import { common } from './common.js';

export const slowHands: Mixture = {
  name: 'slow-hands',
  says: 'resistance, slow meters, correlated noise, a second slow creep on some lines',
  board: {
    ...common.board,
    pins: [16, 30],
    groundEvery: [4, 7],
    signal: [120, 8_000],
    pairs: 0.8,
    pairsAlike: 0.8,
    supplies: 0.12,
    tolerances: [0.15, 0.2],
    faults: { open: 0.05, short: 0.02, leaky: 0.03, raised: 0.02, nearLimit: 0.01, onLimit: 0.005 },
  },
  creep: {
    ...common.creep,
    tauS: [0.05, 0.9],
    amplitude: [-0.5, 0.25],
    supplyTauS: [0.8, 4],
    relaxes: [2, 12],
    tail: { share: 0.15, tauS: [0.8, 2], amplitude: [-0.06, 0.06] },
  },
  hand: {
    ...common.hand,
    slips: 0.15,
    slipS: [0.06, 0.3],
    neighbours: 0.03,
    liftS: 0.7,
    liftMeanS: 1.4,
    hunts: 0.15,
    huntS: [2, 12],
    marginS: [2.5, 5],
    openAnswerS: [5, 12],
    saysNext: 0.4,
  },
  meter: {
    ...common.meter,
    rates: [2, 2.5, 3, 4, 6],
    counts: [4_000, 6_000, 20_000, 40_000],
    noise: [0.0003, 0.003],
    noiseLaw: 'correlated',
    drift: [0.0005, 0.003],
    ranging: { overload: 0.25, blank: 0.1, coarse: 0.05 },
    rangingS: [0.6, 3],
  },
};

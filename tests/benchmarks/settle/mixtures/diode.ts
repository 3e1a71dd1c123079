// The same walk in diode function: volts instead of ohms, one range, far smaller spread between lines.
import type { Mixture } from '../mixture.js';
import { common } from './common.js';

export const diode: Mixture = {
  name: 'diode',
  says: 'diode test, drops of 0.25 to 0.85 V, one range',
  board: {
    ...common.board,
    function: 'diode',
    ground: [0.0002, 0.002],
    signal: [0.25, 0.85],
    supplyLow: [0.06, 0.15],
    supplyHigh: [0.2, 0.6],
    supplyLowShare: 0.3,
    tolerances: [0.1, 0.08],
    supplyTolerance: 0.2,
    shortLimit: 0.02,
    short: [0.0003, 0.01],
  },
  creep: { ...common.creep, amplitude: [-0.6, 0.15] },
  hand: { ...common.hand, contact: [0.00001, 0.0001], landingExtra: [0.00002, 0.001] },
  meter: {
    ...common.meter,
    noise: [0.0001, 0.0015],
    counts: [4_000, 6_000, 22_000, 50_000, 60_000],
    meansConductance: 0,
    ranging: { overload: 0.05, blank: 0.05, coarse: 0 },
    rangingS: [0.1, 0.6],
  },
};

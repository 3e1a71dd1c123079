import { describe, expect, it } from 'vitest';
import {
  leadZeroWords,
  mateWords,
  referenceWords,
  shiftWords,
} from '../../../src/core/context/english-context.js';

describe('the words of the context', () => {
  it.each([
    [
      mateWords({ finding: 'alike', both: 'value', difference: 0.01 }, 'D0_N'),
      'reads like its mate D0_N',
    ],
    [
      mateWords({ finding: 'differs', difference: -0.123 }, 'D0_N'),
      'reads 12 % less than its mate D0_N',
    ],
    [
      mateWords({ finding: 'not-comparable', because: 'not-read' }, 'D0_N'),
      'its mate D0_N is not read yet',
    ],
    [
      shiftWords('signal', { scale: 1.0598, standardUncertainty: 0.006, pins: 21, groups: 7 }),
      'Signal lines read 6 % more on this meter; limits moved along (21 pins of 7 groups agree).',
    ],
    [
      shiftWords('supply', { offset: -0.02, standardUncertainty: 0.002, pins: 5, groups: 2 }),
      'Supply lines read 20 mV less on this meter; limits moved along (5 pins of 2 groups agree).',
    ],
    [
      leadZeroWords({ because: 'too-large', ohms: 1.4, limitOhms: 1 }),
      'Leads not zeroed: 1.4 Ω is more than leads have (1 Ω); clean the tips, or change the leads.',
    ],
    [
      referenceWords({ ok: false, because: 'reads-high', error: 6, limit: 1.88 }, 'resistance'),
      'The meter reads 6 Ω more than the reference is, 1.88 Ω allowed: check leads, battery and range, or take another meter.',
    ],
    [
      referenceWords({ ok: false, because: 'conducts-not' }, 'diode'),
      'The reference does not conduct: turn the diode round, and touch both ends.',
    ],
  ])('should be %j', (said, wanted) => {
    expect(said).toBe(wanted);
  });
});

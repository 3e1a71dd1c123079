import { describe, expect, it } from 'vitest';
import { englishContext as words } from '../../../src/core/words/english-context.js';

describe('the words of the context', () => {
  it.each([
    [
      words.shift('signal', { scale: 1.0598, standardUncertainty: 0.006, pins: 21, groups: 7 }),
      'Signal lines read 6 % more on this meter; limits moved along (21 pins of 7 groups agree).',
    ],
    [
      words.shift('supply', { offset: -0.02, standardUncertainty: 0.002, pins: 5, groups: 2 }),
      'Supply lines read 20 mV less on this meter; limits moved along (5 pins of 2 groups agree).',
    ],
    [words.shift('supply', null), 'Supply lines: no common shift after all; limits moved back.'],
    [
      words.leadZeroRefused({ because: 'too-large', ohms: 1.4, limitOhms: 1 }),
      'Leads not zeroed: 1.4 Ω is more than leads have (1 Ω); clean the tips, or change the leads.',
    ],
    [
      words.reference({ ok: false, because: 'reads-high', error: 6, limit: 1.88 }, 'resistance'),
      'Reads 6.00 Ω too high, 1.88 Ω allowed: check leads, battery, range, or change meter.',
    ],
    [
      words.reference({ ok: false, because: 'conducts-not' }, 'diode'),
      'The reference does not conduct: turn the diode round, and touch both ends.',
    ],
  ])('should be %j', (said, wanted) => {
    expect(said).toBe(wanted);
  });
});

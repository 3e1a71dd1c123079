import { describe, expect, it } from 'vitest';
import type { ScpiTalk } from '../../../src/core/meter/driver-format.js';
import { shownFunction } from '../../../src/core/meter/shown-function.js';
import { scpiDriver } from './dialogue/dialogue-drivers.js';

const { talk } = scpiDriver({
  functionQuery: {
    send: 'FUNC?',
    everyS: 1,
    answers: { RES: 'resistance', 'VOLT:DC': 'dc-volts', VOLT: 'dc-volts' },
  },
  overload: { texts: ['OVLD'] },
});

describe('the answer to a function query', () => {
  it.each([
    ['"RES"', 'resistance'],
    ['res', 'resistance'],
    ["'VOLT:DC'", 'dc-volts'],
    ['"RES +1.000000E+03,+1.000000E-03"', 'resistance'],
    ['VOLT 10,0.001', 'dc-volts'],
    ['"CURR:AC"', 'unlisted'],
  ])('should name the function by its first word: %s', (text, function_) => {
    expect(shownFunction(talk as ScpiTalk, text)).toBe(function_);
  });

  it.each(['+3.880000E+02', '9.9E37', 'OVLD', '-113,"Undefined header"', '', '"'])(
    'should not be seen in a late answer to something else: %s',
    (text) => {
      expect(shownFunction(talk as ScpiTalk, text)).toBeUndefined();
    },
  );
});

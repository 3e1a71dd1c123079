// A press result as the event that the session file keeps.
import type { EventOf } from '../events.js';
import type { PressResult } from './press-result.js';

export const judgedPress = (t: number, result: PressResult): EventOf<'press-judged'> => {
  const { line, part, finding, cycles, pValue, adjustedPValue } = result;
  const { answered, pressedValue, releasedValue } = result;
  return {
    type: 'press-judged',
    t,
    line,
    part,
    finding,
    cycles,
    pValue,
    adjustedPValue,
    answered,
    pressedValue,
    releasedValue,
  };
};

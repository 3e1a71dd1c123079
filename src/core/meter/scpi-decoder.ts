// Reads the answer to a SCPI reading query: one NRf number, alone. The function is the one asked for, since
// the answer does not tell it.
import type { Reading } from '../reading.js';
import { accuracyFor } from './accuracy.js';
import { parseDefiniteBlock } from './definite-block.js';
import type { Asked, MeterDecoder } from './driver-decoder.js';
import type { Driver, ScpiTalk } from './driver-format.js';
import { faultOf } from './fault.js';
import { kindOfMagnitude } from './magnitude.js';
import { parseNrf, plainNumber } from './number-forms.js';
import { plausibilityOf } from './plausible.js';

const contextOf = ({ function: measure, range }: Asked) => ({
  function: measure,
  ...(range === undefined ? {} : { range }),
});

export const scpiDecoder = (driver: Driver, talk: ScpiTalk): MeterDecoder => {
  const overloadTexts = new Set(talk.overload.texts?.map((text) => text.trim()));
  const plausible = plausibilityOf(driver);

  const decode = (t: number, frame: string, asked: Asked): Reading => {
    const answer = (parseDefiniteBlock(frame) ?? frame).trim();
    const overload: Reading = { t, ...contextOf(asked), overload: true };
    if (overloadTexts.has(answer)) return overload;
    const value = parseNrf(plainNumber(answer, talk.numbers));
    if (value === null) return faultOf(t, 'not a number', frame);
    switch (kindOfMagnitude(Math.abs(value), talk.overload)) {
      case 'overload':
        return overload;
      case 'failed':
        return faultOf(t, 'failed measurement', frame);
      case 'blank':
        return { t, ...contextOf(asked), blank: true };
      case 'value': {
        if (!plausible(asked.function, value)) return faultOf(t, 'beyond any range', frame);
        // Bench meters pad the digits, so that the last one tells nothing: the accuracy table does.
        const { resolution } = accuracyFor(driver, asked.function, asked.range, value);
        return { t, ...contextOf(asked), resolution, value };
      }
    }
  };
  return { decode };
};

// Tells a measured number from the figures meters send instead of one.
import type { OverloadForms } from './driver-format.js';

export type MagnitudeKind = 'value' | 'overload' | 'failed' | 'blank';

/** SCPI-1999, 7.2.1.4 and 7.2.1.5 (clauses from memory): 9.9E37 is infinity, 9.91E37 is not a number. */
const noValueFrom = 9.8e37;
const notANumberFrom = 9.905e37;
const notANumberTo = 9.915e37;
/** No instrument's figure: left to the check for absurd values. */
const absurdFrom = 1e38;

/**
 * What a magnitude stands for. From 9.8E37 on it is never a value, whatever the driver says. Not-a-number is an
 * overload unless the driver tells otherwise, since that is what makers were seen to send it for.
 */
export const kindOfMagnitude = (magnitude: number, forms: OverloadForms): MagnitudeKind => {
  const { atLeast = Number.POSITIVE_INFINITY, faultAtLeast = Number.POSITIVE_INFINITY } = forms;
  if (magnitude >= noValueFrom && magnitude < absurdFrom) {
    const notANumber = magnitude > notANumberFrom && magnitude < notANumberTo;
    return notANumber && forms.notANumberIsBlank ? 'blank' : 'overload';
  }
  if (magnitude >= absurdFrom) return 'value';
  if (magnitude >= faultAtLeast) return 'failed';
  return magnitude >= atLeast ? 'overload' : 'value';
};

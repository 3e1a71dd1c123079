// `--lead-zero` and `--reference VALUE,PERCENT`: what is done with the leads before the walk begins.
import { InvalidArgumentError } from 'commander';
import { readNotedValue } from '../core/learn/noted-value.js';
import { type MeasureFunction, siUnit } from '../core/reading.js';
import type { SessionPlan } from '../core/walk/open-session.js';
import { english } from '../core/words/english.js';
import { exitCodes, UserError } from './user-error.js';

/** The value as it was written: its unit depends on what is measured. */
export interface ReferenceAsked {
  readonly value: string;
  readonly tolerance: number;
}

export const readReference = (text: string): ReferenceAsked => {
  const [value = '', percent = '', ...more] = text.split(',');
  const tolerance = Number(percent.replace(/\s*%$/u, '')) / 100;
  if (value.trim() === '' || more.length > 0 || !(tolerance > 0 && tolerance <= 1)) {
    throw new InvalidArgumentError('write value and tolerance, such as 100,1 or 4k7,0.5');
  }
  return { value, tolerance };
};

/**
 * Resistors are tried in resistance, junctions in diode test.
 * @throws UserError where the step makes no sense in the walk's function, or the value is none.
 */
export const askedReady = (
  { leadZero, reference }: { readonly leadZero?: boolean; readonly reference?: ReferenceAsked },
  measure: MeasureFunction,
): Pick<SessionPlan, 'ready' | 'reference'> => {
  if (leadZero && siUnit(measure) !== 'Ω') {
    throw new UserError(english.refusals.zeroWithoutOhms(measure), exitCodes.usage);
  }
  const steps = [
    ...(leadZero ? (['lead-zero'] as const) : []),
    ...(reference === undefined ? [] : (['reference'] as const)),
  ];
  return {
    ...(steps.length === 0 ? {} : { ready: steps }),
    ...(reference === undefined ? {} : { reference: knownPart(reference, measure) }),
  };
};

const knownPart = ({ value, tolerance }: ReferenceAsked, measure: MeasureFunction) => {
  const noted = readNotedValue(value, '', measure);
  if (noted.noted === 'value' && noted.value > 0) return { value: noted.value, tolerance };
  const why =
    noted.noted === 'wrong'
      ? `${noted.what}; ${noted.fix}`
      : english.refusals.referenceWithoutValue;
  throw new UserError(english.refusals.behind('--reference', why), exitCodes.usage);
};

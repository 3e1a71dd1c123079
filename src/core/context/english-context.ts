// What the context has to say, in English: findings and refusals that are data everywhere else. Names arrive cleaned.
import { formatReading } from '../measure/format-reading.js';
import { type MeasureFunction, siUnit } from '../reading.js';
import type { ReferenceOutcome } from './check-reference.js';
import type { MateComparison } from './compare-mates.js';
import type { Shift, ShiftClass } from './estimate-shift.js';
import type { Witness } from './judge-without-reference.js';
import type { LeadZeroRefusal } from './lead-zero.js';

const percent = (fraction: number): string =>
  `${Number((100 * Math.abs(fraction)).toPrecision(2))} %`;
const ohms = (value: number): string => formatReading(value, null, 'Ω');

export const mateWords = (found: MateComparison, mate: string): string => {
  switch (found.finding) {
    case 'alike':
      switch (found.both) {
        case 'value':
          return `reads like its mate ${mate}`;
        case 'overload':
          return `reads overload like its mate ${mate}: both open, or neither meant to conduct`;
        case 'short':
          return `shorted like its mate ${mate}`;
      }
      break;
    case 'differs':
      return found.difference === null
        ? `only one of it and its mate ${mate} reads a value`
        : `reads ${percent(found.difference)} ${found.difference > 0 ? 'more' : 'less'} than its mate ${mate}`;
    case 'not-comparable':
      switch (found.because) {
        case 'not-read':
          return `its mate ${mate} is not read yet`;
        case 'wobbles':
          return `not compared with its mate ${mate}: one of the two wobbles`;
        case 'different-ranges':
          return `not compared with its mate ${mate}: read on another range`;
        case 'too-uncertain':
          return `not compared with its mate ${mate}: the display is too coarse here`;
      }
  }
};

/** @example 'Signal lines read 6 % more on this meter; limits moved along (21 pins of 7 groups agree).' */
export const shiftWords = (kind: ShiftClass, shift: Shift): string => {
  const { pins, groups } = shift;
  const lines = kind === 'signal' ? 'Signal lines' : 'Supply lines';
  const agree = `limits moved along (${pins} pins of ${groups} groups agree)`;
  const by = 'scale' in shift ? shift.scale - 1 : shift.offset;
  const much = 'scale' in shift ? percent(by) : formatReading(Math.abs(by), null, 'V');
  return `${lines} read ${much} ${by > 0 ? 'more' : 'less'} on this meter; ${agree}.`;
};

export const witnessWords: Readonly<Record<Witness, string>> = {
  'ground-good': 'ground',
  'ground-bad': 'should be ground',
  shorted: 'as good as ground',
  'same-line-reads-less': 'another pin of the same line reads less: look at this joint',
  'mate-alike': 'like its mate',
  'mate-differs': 'unlike its mate',
  'mate-conducts': 'its mate conducts',
  'mate-also-overload': 'its mate reads overload too',
  'group-alike': 'like its group',
  'group-apart': 'unlike its group',
  'group-conducts': 'its group conducts',
  'unused-overload': 'unused',
  'unused-conducts': 'unused, and yet conducts',
};

export const leadZeroWords = (refused: LeadZeroRefusal): string => {
  switch (refused.because) {
    case 'too-few':
      return `Leads not zeroed: ${refused.readings} readings, ${refused.needed} needed; hold the probes together longer.`;
    case 'wrong-function':
      return `Leads not zeroed: the meter measures ${refused.function}; switch it to resistance.`;
    case 'flagged':
      return `Leads not zeroed: the meter's ${refused.flag} is on; switch it off.`;
    case 'not-touching':
      return 'Leads not zeroed: overload; press the probes together.';
    case 'unsteady':
      return `Leads not zeroed: the reading moved by ${ohms(refused.spreadOhms)}; clean the tips and press them together.`;
    case 'negative':
      return `Leads not zeroed: ${ohms(refused.ohms)} is below nothing; switch off a zero set at the meter.`;
    case 'too-large':
      return `Leads not zeroed: ${ohms(refused.ohms)} is more than leads have (${ohms(refused.limitOhms)}); clean the tips, or change the leads.`;
  }
};

export const referenceWords = (outcome: ReferenceOutcome, measure: MeasureFunction): string => {
  const shown = (value: number): string => formatReading(value, null, siUnit(measure));
  if (outcome.ok) {
    return `Reference good: off by ${shown(Math.abs(outcome.error))}, ${shown(outcome.limit)} allowed.`;
  }
  switch (outcome.because) {
    case 'reads-high':
    case 'reads-low': {
      const way = outcome.because === 'reads-high' ? 'more' : 'less';
      return `The meter reads ${shown(Math.abs(outcome.error))} ${way} than the reference is, ${shown(outcome.limit)} allowed: check leads, battery and range, or take another meter.`;
    }
    case 'another-part':
      return `That is another part, or another unit: off by ${shown(Math.abs(outcome.error))}.`;
    case 'proves-nothing':
      return `This reference proves nothing: ${shown(outcome.limit)} would be allowed; take a closer one or a finer range.`;
    case 'conducts-not':
      return measure === 'diode'
        ? 'The reference does not conduct: turn the diode round, and touch both ends.'
        : 'The reference does not conduct: touch both ends.';
    case 'shorted':
      return 'The probes touch one another: touch both ends of the reference.';
  }
};

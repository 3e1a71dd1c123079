// What the context has to say, in English: findings and refusals that are data everywhere else.
import { formatReading } from '../measure/format-reading.js';
import { siUnit } from '../reading.js';
import type { ContextWords } from './context-words.js';

const percent = (fraction: number): string =>
  `${Number((100 * Math.abs(fraction)).toPrecision(2))} %`;
const ohms = (value: number): string => formatReading(value, null, 'Ω');

export const englishContext: ContextWords = {
  shift: (kind, shift) => {
    const lines = kind === 'signal' ? 'Signal lines' : 'Supply lines';
    if (shift === null) return `${lines}: no common shift after all; limits moved back.`;
    const { pins, groups } = shift;
    const by = 'scale' in shift ? shift.scale - 1 : shift.offset;
    const much = 'scale' in shift ? percent(by) : formatReading(Math.abs(by), null, 'V');
    const agree = `limits moved along (${pins} pins of ${groups} groups agree)`;
    return `${lines} read ${much} ${by > 0 ? 'more' : 'less'} on this meter; ${agree}.`;
  },
  reason: {
    'meter-shift': 'limits moved to this meter',
    donor: 'held against the donor',
    'boards-differ': 'the boards differ, and nothing tells which is wrong',
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
  },
  advice: {
    'hold-longer': 'hold the probe longer',
    retake: 'touch it once more',
    'change-range': 'a finer range would tell',
    'change-function': 'try the other function the profile knows',
    'compare-mate': 'read its mate, then compare',
    discharge: 'discharge, then measure again',
  },
  certainty: { very: 'very sure', sure: 'sure', likely: 'likely', unsure: 'not sure' },
  anew: (judged) => `In the light of the other readings: ${judged}`,
  readyAsked: (step, known) =>
    step === 'lead-zero'
      ? 'Hold the probe tips together: the leads are zeroed. Skip leaves that out.'
      : `Touch both ends of the reference, ${known}. Skip leaves that out.`,
  readyLeft: (step) => (step === 'lead-zero' ? 'Leads not zeroed.' : 'Reference left out.'),
  leadZeroed: (ohms) => `Leads zeroed: ${ohms} is taken off every reading. Part the tips.`,
  donorUnknown:
    'This profile expects nothing of most lines: pins are told by their order and by the donor alone. Listen for the pin that is named; where the walk is in doubt it calls you back to one it knows.',
  orderAlone:
    'This profile expects nothing of most lines: pins are named by their order alone. Touch each once, in order; a pin left out unnoticed misnames those after it. A donor walked first, or beside, tells more.',
  groundedLead: 'A meter link without isolation grounds the black lead through the computer.',
  leadZeroRefused: (refused) => {
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
  },
  reference: (outcome, measure) => {
    // No finer than what is allowed makes sense of.
    const limit = 'limit' in outcome ? outcome.limit : null;
    const shown = (value: number): string =>
      formatReading(value, limit === null ? null : limit / 40, siUnit(measure));
    if (outcome.ok) {
      return `Reference good: off by ${shown(Math.abs(outcome.error))}, ${shown(outcome.limit)} allowed.`;
    }
    switch (outcome.because) {
      case 'reads-high':
      case 'reads-low': {
        const way = outcome.because === 'reads-high' ? 'high' : 'low';
        return `Reads ${shown(Math.abs(outcome.error))} too ${way}, ${shown(outcome.limit)} allowed: check leads, battery, range, or change meter.`;
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
  },
};

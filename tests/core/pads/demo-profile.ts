// The demo profile and a plain meter, for the tests of the pads.
import { readFileSync } from 'node:fs';
import type { AccuracyStatement } from '../../../src/core/session-events.js';
import { readProfile } from '../../support/read-profile.js';

const { content } = readProfile(readFileSync('profiles/demo.json', 'utf8'));
if (content === undefined || content === null) throw new Error('the demo profile does not read');
export const demo = content;

/** 0.5 % + 3 counts of 6,000. */
export const plainMeter: AccuracyStatement = {
  from: 'assumed',
  fullScaleCounts: 6000,
  rows: [{ fullScale: null, resolution: null, percent: 0.5, counts: 3 }],
};

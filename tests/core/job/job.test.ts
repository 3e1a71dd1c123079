import { describe, expect, it } from 'vitest';
import { decodeLine, encodeEvent } from '../../../src/core/event-line.js';
import type { Numbered, WalkEvent } from '../../../src/core/events.js';
import { emptyJob, foldJob, type Job } from '../../../src/core/job/job.js';

const jobOf = (...events: WalkEvent[]): Job => events.reduce(foldJob, emptyJob);
const hash = (digit: string): string => digit.repeat(64);

describe('the job folded from its events', () => {
  it('keeps the last text of every field and leaves the others', () => {
    const { intake } = jobOf(
      { type: 'intake-noted', t: 0, ticket: 'T-1', symptom: 'dark' },
      { type: 'intake-noted', t: 9, symptom: 'lit, but black', dataMatters: 'yes' },
      { type: 'intake-noted', t: 10, ticket: '' },
    );
    expect(intake).toEqual({ ticket: '', symptom: 'lit, but black', dataMatters: 'yes' });
  });

  it('does not take the number of a stored event for a field', () => {
    const stored: Numbered = { seq: 4, type: 'intake-noted', t: 0, device: 'a meter' };
    expect(foldJob(emptyJob, stored).intake).toEqual({ device: 'a meter' });
  });

  it('knows a picture by its hash, a caution and an observation by its name', () => {
    const job = jobOf(
      { type: 'photo-attached', t: 0, file: 'a.jpg', sha256: hash('a'), bytes: 3 },
      { type: 'photo-attached', t: 1, file: 'copy.jpg', sha256: hash('a'), bytes: 3 },
      { type: 'photo-attached', t: 1, file: 'a.jpg', sha256: hash('b'), bytes: 3 },
      { type: 'caution-confirmed', t: 1, caution: 'heat', says: 'old', by: 'option' },
      { type: 'caution-confirmed', t: 2, caution: 'heat', says: 'new', by: 'keyboard' },
      { type: 'symptom-observed', t: 3, observation: 'lamp', asks: 'Lit?', answer: 'yes' },
      { type: 'symptom-observed', t: 4, observation: 'lamp', asks: 'Lit?', answer: 'no' },
    );
    expect(job.photos.map(({ file }) => file)).toEqual(['copy.jpg', 'a.jpg']);
    expect(job.cautions.map(({ says }) => says)).toEqual(['new']);
    expect(job.observed.map(({ answer }) => answer)).toEqual(['no']);
  });

  it('keeps every measurement of residual volts, the charge before the discharge too', () => {
    const at = (t: number, volts: number): WalkEvent => ({
      type: 'residual-measured',
      t,
      line: 'LAMP_BOOST',
      volts,
      limit: 0.05,
      by: 'meter',
    });
    const { residuals } = jobOf(at(1, 12.4), at(20, 0.003));
    expect(residuals.map((one) => 'volts' in one && one.volts)).toEqual([12.4, 0.003]);
  });

  it('passes over what is no part of it', () => {
    const noted: WalkEvent = { type: 'intake-noted', t: 0, ticket: 'T-1' };
    const walked: WalkEvent = { type: 'pin-reached', t: 1, pin: '1', line: 'GND' };
    expect(jobOf(noted, walked)).toEqual(jobOf(noted));
  });

  it('reads back from its line as it was written', () => {
    const event: WalkEvent = {
      type: 'groups-proposed',
      t: 1.5,
      symptoms: [{ id: 'dark', says: 'Dark', probability: 0.9 }],
      other: 0.1,
      walkFirst: [{ group: 'lamp', probability: 0.9 }],
      leaveAlone: [],
      because: [{ observation: 'lamp', answer: 'no', factor: 12.5 }],
      next: null,
    };
    const { event: read } = decodeLine(encodeEvent(7, event, '0'.repeat(16)), 1);
    expect(read).toEqual({ seq: 7, ...event });
  });
});

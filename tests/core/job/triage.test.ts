import { describe, expect, it } from 'vitest';
import { cleanText } from '../../../src/core/clean-text.js';
import { type Answers, triage } from '../../../src/core/job/triage.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { describeTriage } from '../../../src/core/words/describe-triage.js';
import { englishJob } from '../../../src/core/words/english-job.js';
import { loadProfile } from '../../../src/store/load-definitions.js';

const { content: demo } = loadProfile('demo');

const about = (answers: Answers, profile: Profile = demo) => {
  const proposed = triage(profile, answers);
  if (proposed === null) throw new Error('this profile names symptoms');
  return proposed;
};
const groups = (named: readonly { readonly group: string }[]) => named.map(({ group }) => group);

/** A table small enough to weigh by hand: the shares of the two symptoms and of anything else are 0.6, 0.3, 0.1. */
const small: Profile = {
  ...demo,
  observations: { lamp: { asks: 'Lit?' }, host: { asks: 'Answers?' } },
  symptoms: [
    { id: 'a', says: 'A', walkFirst: ['lamp'], weight: 2, shows: { lamp: 0.1, host: 0.9 } },
    { id: 'b', says: 'B', walkFirst: ['supply'], leaveAlone: ['lamp'], shows: { lamp: 0.8 } },
  ],
};

describe('weighing symptoms', () => {
  it('shares them by their weights before anything was seen', () => {
    const { symptoms, other } = about({}, small);
    expect(symptoms.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(symptoms[0]?.probability).toBeCloseTo(0.6, 12);
    expect(symptoms[1]?.probability).toBeCloseTo(0.3, 12);
    expect(other).toBeCloseTo(0.1, 12);
  });

  it('follows Bayes, worked by hand', () => {
    // lamp yes: 0.6 x 0.1, 0.3 x 0.8, 0.1 x 0.5 = 0.06, 0.24, 0.05; sum 0.35.
    const { symptoms, other } = about({ lamp: 'yes' }, small);
    expect(symptoms).toEqual([
      { id: 'b', says: 'B', probability: expect.closeTo(0.24 / 0.35, 12) },
      { id: 'a', says: 'A', probability: expect.closeTo(0.06 / 0.35, 12) },
    ]);
    expect(other).toBeCloseTo(0.05 / 0.35, 12);
  });

  it('holds each answer against everything else as the other answers weigh it', () => {
    // 0.8 against (0.6 x 0.1 + 0.1 x 0.5) / 0.7.
    const { because } = about({ lamp: 'yes' }, small);
    expect(because).toEqual([
      { observation: 'lamp', answer: 'yes', factor: expect.closeTo(0.8 / (0.11 / 0.7), 12) },
    ]);
  });

  it('lets what was not looked at, and what nobody asks, weigh nothing', () => {
    expect(about({ lamp: 'unknown', weather: 'yes' }, small)).toEqual(about({}, small));
  });

  it('comes to the same whatever the order of the answers', () => {
    expect(about({ host: 'yes', lamp: 'no' })).toEqual(about({ lamp: 'no', host: 'yes' }));
  });

  it('shares one out in all', () => {
    const { symptoms, other } = about({ lamp: 'yes', picture: 'no', host: 'yes', keys: 'no' });
    const sum = symptoms.reduce((all, { probability }) => all + probability, other);
    expect(sum).toBeCloseTo(1, 12);
  });

  it('gives what nobody named its due when the answers fit nothing', () => {
    const fits = about({ lamp: 'yes', picture: 'no', host: 'yes' }).other;
    const fitsNothing = about({ lamp: 'no', picture: 'no', host: 'yes', touch: 'yes' }).other;
    expect(fitsNothing).toBeGreaterThan(3 * fits);
  });

  it('has nothing to say of a profile without symptoms', () => {
    const { symptoms: _symptoms, ...bare } = demo;
    expect(triage(bare, { lamp: 'yes' })).toBeNull();
    expect(describeTriage(null, bare, englishJob)).toEqual([englishJob.triage.nothingNamed]);
  });
});

// The three cases are common practice, no source.
describe('triage on the demo board', () => {
  it('lamp lit, answers a computer, shows nothing: picture lines first, lamp left alone', () => {
    const { walkFirst, leaveAlone, symptoms } = about({ lamp: 'yes', host: 'yes', picture: 'no' });
    expect(symptoms[0]?.id).toBe('no-picture');
    expect(groups(walkFirst)).toEqual(['picture-data', 'picture-clock', 'control']);
    expect(groups(leaveAlone)).toContain('lamp');
  });

  it('no answer from a computer: that is settled before the panel is suspected', () => {
    const proposed = about({ lamp: 'no', host: 'no', picture: 'no' });
    expect(proposed.symptoms[0]?.id).toBe('no-host');
    expect(proposed.walkFirst).toEqual([]);
    expect(groups(proposed.leaveAlone)).toEqual(
      expect.arrayContaining(['picture-data', 'picture-clock', 'lamp']),
    );
    expect(describeTriage(proposed, demo, englishJob)).toContain(englishJob.triage.notHere);
  });

  it('picture whole and lit, touch dead: touch and its bus', () => {
    const { walkFirst } = about({ lamp: 'yes', picture: 'yes', stripes: 'no', touch: 'no' });
    expect(groups(walkFirst)).toEqual(['touch', 'bus']);
  });

  it('asks next for what tells most, and never for what was answered', () => {
    const first = about({}).next?.observation ?? '';
    expect(Object.keys(demo.observations ?? {})).toContain(first);
    const second = about({ [first]: 'no' }).next?.observation;
    expect(second).not.toBe(first);
  });

  it('proposes no group before anything was seen', () => {
    expect(about({})).toMatchObject({ walkFirst: [], leaveAlone: [], because: [] });
  });

  it('does not ask about stripes in a picture that is not there', () => {
    const { next } = about({ lamp: 'yes', host: 'yes', picture: 'no' });
    expect(next?.observation).not.toBe('stripes');
  });

  it('says in words what it goes by', () => {
    const lines = describeTriage(
      about({ lamp: 'yes', host: 'yes', picture: 'no' }),
      demo,
      englishJob,
    );
    expect(lines[0]).toMatch(/^Likeliest: Lamp lit, screen black \(\d\d %\)$/u);
    expect(lines.join('\n')).toContain('Is there a picture, even a faint one? no');
    expect(lines).toContain('Walk first: Picture data pairs, Picture clock pair, Control lines');
  });

  it('keeps what a profile says from acting on a terminal', () => {
    const hostile: Profile = {
      ...small,
      observations: { lamp: { asks: '\u001b[2JLit?' } },
      symptoms: [{ id: 'x', says: '\u001b]0;x\u0007', walkFirst: ['lamp'], shows: { lamp: 0.99 } }],
      groups: { lamp: { title: '\u202Epmal' } },
    };
    const text = describeTriage(about({ lamp: 'yes' }, hostile), hostile, englishJob).join('\n');
    expect(text).toContain('␛]0;x');
    for (const line of text.split('\n')) expect(cleanText(line, 999)).toBe(line);
  });
});

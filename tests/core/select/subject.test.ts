import { describe, expect, it } from 'vitest';
import { selectNext, selectSubject } from '../../../src/core/select/subject.js';
import { steppedBench } from '../../ui/support/bench-session.js';

describe('subject of the screen', () => {
  it('should be no pin before the walk, and the first one next', () => {
    const { session } = steppedBench();
    expect(selectSubject(session.state)).toBeNull();
    expect(selectNext(session.state)?.pin).toBe('1');
  });

  it('should stay with the judged pin while the probe rests on it', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    expect(until((state) => state.cursor === 2)).toBe(true);
    const { state } = session;
    expect(state.contact.rest).not.toBeNull();
    expect(selectSubject(state)).toMatchObject({ planned: { pin: '2' }, judged: true });
    expect(selectNext(state)?.pin).toBe('3');
  });

  it('should go on to the waiting pin once the probe is lifted', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until((state) => state.cursor === 2);
    expect(until((state) => state.contact.rest === null, 10)).toBe(true);
    expect(selectSubject(session.state)).toMatchObject({ planned: { pin: '3' }, judged: false });
    expect(selectNext(session.state)?.pin).toBe('4');
  });

  it('should say that a verdict waits for its repeat touch', () => {
    const { session, until } = steppedBench({ scenario: 'everything' });
    expect(until((state) => selectSubject(state)?.confirming === true)).toBe(true);
    const subject = selectSubject(session.state);
    expect(subject?.record.verdict).not.toBe('normal');
    expect(subject?.record.verdict).not.toBe('unread');
    expect(subject?.record.agreed).toBe(false);
  });

  it('should be no pin when all are done', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    expect(until((state) => state.stage === 'finished')).toBe(true);
    expect(until((state) => state.contact.rest === null, 30)).toBe(true);
    expect(selectSubject(session.state)).toBeNull();
    expect(selectNext(session.state)).toBeNull();
  });
});

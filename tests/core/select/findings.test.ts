import { describe, expect, it } from 'vitest';
import { selectFindings, selectProgress } from '../../../src/core/select/findings.js';
import { steppedBench } from '../../ui/support/bench-session.js';

describe('findings', () => {
  it('should be empty for a good board, with every pin counted', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    expect(until((state) => state.stage === 'finished')).toBe(true);
    expect(selectFindings(session.state)).toEqual([]);
    expect(selectProgress(session.state)).toEqual({ counts: [['normal', 40]], left: 0, total: 40 });
  });

  it('should list what is not normal in walking order', () => {
    const { session, until } = steppedBench({ scenario: 'demo' });
    expect(until((state) => state.stage === 'finished')).toBe(true);
    const findings = selectFindings(session.state);
    expect(findings.length).toBeGreaterThan(0);
    const indices = findings.map(({ index }) => index);
    expect(indices).toEqual([...indices].sort((a, b) => a - b));
    expect(findings.every(({ verdict }) => verdict !== 'normal')).toBe(true);
  });

  it('should count a skipped pin as a finding and a waiting one as left', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until((state) => state.cursor === 2 && state.contact.rest === null);
    expect(selectFindings(session.state)).toEqual([]);
    session.act({ act: 'skip' });
    expect(selectFindings(session.state)).toMatchObject([{ pin: '3', verdict: 'unread' }]);
    expect(selectProgress(session.state)).toEqual({
      counts: [
        ['normal', 2],
        ['unread', 1],
      ],
      left: 37,
      total: 40,
    });
  });
});

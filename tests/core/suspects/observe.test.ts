import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import type { Evidence } from '../../../src/core/suspects/evidence.js';
import { observe } from '../../../src/core/suspects/observe.js';
import type { Verdict } from '../../../src/core/verdict.js';

/** As the walk gathers it, which knows what is being probed. */
const collectEvidence = (events: readonly WalkEvent[]): Evidence => {
  let evidence: Evidence = [];
  let probing: EventOf<'probe-begun'> | null = null;
  for (const event of events) {
    if (event.type === 'probe-begun') probing = event;
    if (event.type === 'probe-ended') probing = null;
    evidence = observe(evidence, event, probing);
  }
  return evidence;
};

const judged = (t: number, pin: string, verdict: Verdict): WalkEvent => ({
  type: 'pin-judged',
  t,
  pin,
  line: `L${pin}`,
  verdict,
  confidence: 0.99,
  expected: null,
  agreed: true,
});

describe('evidence from a session', () => {
  it('should be the last verdict of each pin, where it was given last', () => {
    const events: WalkEvent[] = [
      judged(1, '1', 'open'),
      { type: 'walk-continued', t: 1.5, pin: '2' },
      judged(2, '2', 'normal'),
      judged(3, '3', 'open'),
      judged(4, '1', 'normal'),
    ];
    expect(collectEvidence(events)).toEqual([
      { kind: 'pin', pin: '2', verdict: 'normal' },
      { kind: 'pin', pin: '3', verdict: 'open' },
      { kind: 'pin', pin: '1', verdict: 'normal' },
    ]);
  });

  it('should hold the last finding of each press', () => {
    const pressed = (t: number, part: string, finding: 'loose' | 'inconclusive'): WalkEvent => ({
      type: 'press-judged',
      t,
      line: 'L1',
      part,
      finding,
      cycles: 4,
      pValue: 0.01,
      adjustedPValue: 0.05,
      answered: 4,
      pressedValue: 388,
      releasedValue: null,
    });
    const events = [
      judged(1, '1', 'open'),
      pressed(2, 'FL2', 'inconclusive'),
      pressed(3, 'bare board', 'inconclusive'),
      pressed(4, 'FL2', 'loose'),
    ];
    expect(collectEvidence(events)).toEqual([
      { kind: 'pin', pin: '1', verdict: 'open' },
      { kind: 'press', line: 'L1', part: 'bare board', finding: 'inconclusive' },
      { kind: 'press', line: 'L1', part: 'FL2', finding: 'loose' },
    ]);
  });

  it('should be empty for a session without verdicts', () => {
    expect(collectEvidence([])).toEqual([]);
  });
});

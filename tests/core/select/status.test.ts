import { describe, expect, it } from 'vitest';
import { selectStatus } from '../../../src/core/select/status.js';
import { steppedBench } from '../../ui/support/bench-session.js';

describe('status', () => {
  it('should put what cannot wait before everything else', () => {
    const { state } = steppedBench().session;
    const troubled = { ...state, paused: 'asked' as const };
    expect(selectStatus(troubled, 'disk full').kind).toBe('trouble');
    expect(selectStatus(troubled, null)).toEqual({ kind: 'paused', reason: 'asked' });
    const held = { ...state, hold: { reason: 'negative' as const, detail: 'why' } };
    expect(selectStatus(held, null)).toEqual({ kind: 'held', reason: 'negative', detail: 'why' });
  });

  it('should lead through both grounds', () => {
    const { session, until } = steppedBench();
    const ground = { kind: 'ground', which: 1, rests: false };
    expect(selectStatus(session.state, null)).toEqual(ground);
    until((state) => state.grounds === 1);
    expect(selectStatus(session.state, null)).toEqual({ ...ground, which: 2, rests: true });
    until((state) => state.contact.rest === null);
    expect(selectStatus(session.state, null)).toEqual({ ...ground, which: 2 });
  });

  it('should show a touch from the air to its verdict', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until((state) => state.cursor === 1 && state.contact.air !== null);
    expect(selectStatus(session.state, null).kind).toBe('waiting');
    expect(until((state) => selectStatus(state, null).kind === 'settling')).toBe(true);
    expect(until((state) => selectStatus(state, null).kind === 'judged', 5)).toBe(true);
    expect(selectStatus(session.state, null)).toMatchObject({
      verdict: 'normal',
      confirming: false,
    });
  });

  it('should ask about an open line, and say where overload is expected', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    expect(until((state) => state.question?.question === 'open')).toBe(true);
    const { pin } = session.state.question ?? { pin: '' };
    expect(selectStatus(session.state, null)).toEqual({
      kind: 'question',
      question: 'open',
      pin,
      place: null,
      expectedOverload: true,
    });
    const bare = {
      ...session.state,
      question: { question: 'open' as const, pin: '2', t: 0, touch: 0 },
    };
    expect(selectStatus(bare, null)).toMatchObject({ expectedOverload: false });
  });

  it('should ask for a lift while the probe rests on ground after the ground check', () => {
    const { session, until } = steppedBench();
    until((state) => state.stage === 'walking');
    expect(selectStatus(session.state, null)).toEqual({ kind: 'lift' });
  });

  it('should say that a supply line is charging', () => {
    const { until } = steppedBench({ scenario: 'healthy' });
    expect(until((state) => selectStatus(state, null).kind === 'charging')).toBe(true);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeLine } from '../../../src/core/event-line.js';
import type { WalkEvent } from '../../../src/core/events.js';
import { redactEvent } from '../../../src/core/share/redact-event.js';
import { redactSession } from '../../../src/core/share/redact-session.js';
import { chainStep } from '../../../src/store/chain-step.js';
import { arbitraryEvent } from '../../store/event-arbitrary.js';
import { note, opened, reading } from '../../store/sample-session.js';

const bytesOf = (line: string): Uint8Array => Buffer.from(line);
const redacted = (events: readonly WalkEvent[], of = 'a'.repeat(64)) => [
  ...redactSession(events, of, chainStep, bytesOf),
];
const customer = 'Mrs Testperson 0555-1234';

describe('redacting a session', () => {
  it('should take every free text of a person out and leave what was measured', () => {
    const events: WalkEvent[] = [
      { ...opened, link: `log:/home/${customer}/a.jsonl` },
      reading(1),
      note(2, customer),
      { type: 'file-changed', t: 3, change: 'blocked', detail: `/home/${customer}` },
      { type: 'link-changed', t: 4, change: 'lost', detail: customer },
      { type: 'meter-spoke', t: 5, says: 'identity', text: 'A meter' },
    ];
    const lines = redacted(events);
    expect(lines.map(({ line }) => line).join('\n')).not.toContain('Testperson');
    const told = lines.map(({ line }, at) => decodeLine(line, at + 1).event);
    expect(told).toEqual([
      { seq: 0, ...opened, link: 'log:', redacted: { of: 'a'.repeat(64) } },
      { seq: 1, ...reading(1) },
      { seq: 2, type: 'act-taken', t: 2, act: 'note' },
      { seq: 3, type: 'file-changed', t: 3, change: 'blocked', detail: 'redacted' },
      { seq: 4, type: 'link-changed', t: 4, change: 'lost' },
      { seq: 5, type: 'meter-spoke', t: 5, says: 'identity', text: 'A meter' },
    ]);
  });

  it('should chain and number the lines anew', () => {
    const lines = redacted([opened, note(1, customer), reading(2)]);
    let chain = '0'.repeat(64);
    lines.forEach(({ line, fingerprint }, seq) => {
      expect(JSON.parse(line)).toMatchObject({ seq, prev: chain.slice(0, 16) });
      chain = chainStep(chain, bytesOf(line));
      expect(fingerprint).toBe(chain);
    });
    expect(lines).toHaveLength(3);
  });

  it('should keep the fingerprint of the whole session when it is redacted again', () => {
    const once = redacted([opened, note(1, customer)]);
    const events = once.map(({ line }, at) => decodeLine(line, at + 1).event as WalkEvent);
    expect(redacted(events, 'b'.repeat(64))).toEqual(once);
  });

  it('should make of every event of any type one that can be written, the same when done twice', () => {
    fc.assert(
      fc.property(arbitraryEvent, (event) => {
        const left = redactEvent(event);
        if (left === null) return;
        expect(redactEvent(left)).toEqual(left);
        expect(() => redacted([left])).not.toThrow();
      }),
      { numRuns: 500 },
    );
  });

  it.each(['__proto__', 'constructor', 'prototype'])('should pass over a field named %s', (key) => {
    const hostile = JSON.parse(`{"type":"act-taken","t":1,"act":"next","${key}":{"text":"x"}}`);
    expect(redactEvent(hostile)).toEqual({ type: 'act-taken', t: 1, act: 'next' });
    expect(({} as { text?: string }).text).toBeUndefined();
  });
});

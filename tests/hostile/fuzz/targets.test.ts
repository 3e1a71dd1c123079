// A few hundred cases of each of `npm run fuzz`'s million, and the cases that once did not hold.
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../../src/core/definition/read-definition.js';
import type { Numbered } from '../../../src/core/events.js';
import { formatProblem } from '../../../src/core/problems.js';
import { createLogParser } from '../../../src/core/reading-log.js';
import { foldStored, openStored } from '../../../src/core/walk/fold-stored.js';
import { LineFollower } from '../../../src/store/line-follower.js';
import { driverKind } from '../../../src/store/load-definitions.js';
import { eventful } from '../../report/session-events.js';
import { readJsonFile } from '../../support/driver-files.js';
import { runTarget } from './run-target.js';
import { targets } from './targets.js';

describe('fuzz', () => {
  it.each(targets)('should hold for a few hundred cases: $name', (target) => {
    expect(runTarget(target, 300, 20260131).failure).toBeNull();
  });
});

const opened = eventful[0];
if (opened?.type !== 'session-opened') throw new Error('no header');

describe('what fuzzing found', () => {
  const driver = readJsonFile('drivers/key-request.json') as Record<string, unknown>;
  const linesFor = (content: object): string[] =>
    readDefinition(driverKind, JSON.stringify(content)).problems.map((one) =>
      formatProblem('FILE', one),
    );

  it('should show choices that are control characters as they are typed', () => {
    const wire = { ...(driver.wire as object), sendEnd: undefined };
    expect(linesFor({ ...driver, wire })).toEqual([
      expect.stringContaining('add "sendEnd": one of "\\n", "\\r", "\\r\\n", ""'),
    ]);
  });

  it('should clean what the pattern reader says of a pattern', () => {
    const line = { ...(driver.line as object), pattern: `(\u202e${'x'.repeat(5000)}` };
    const [says = ''] = linesFor({ ...driver, line });
    expect(says).toContain('(\ufffdxx');
    expect(says.length).toBeLessThan(1100);
  });

  it.each(['{"t":1,"\\u001b[2J":1}', '{"t":1,"mark":"press","\\u001b[2J":1}'])(
    'should clean the key that a reading log must not have: %s',
    (line) => {
      expect(() => createLogParser()(line)).toThrow(/"␛\[2J"/u);
    },
  );

  it('should refuse a session whose profile is not sound', () => {
    const { content } = opened.profile;
    const [pin, ...pins] = content.connector.pins;
    const connector = { ...content.connector, pins: [{ ...pin, line: 'NOWHERE' }, ...pins] };
    const profile = { ...opened.profile, content: { ...content, connector } };
    const buffer = Buffer.from(
      JSON.stringify({ seq: 0, ...opened, profile, prev: '0'.repeat(16) }),
    );
    const told: string[] = [];
    const follower = new LineFollower(
      false,
      ({ line, what }) => void told.push(`${line}: ${what}`),
    );
    follower.take({ buffer, from: 0, to: buffer.length, ended: true });
    expect(told).toEqual([expect.stringMatching(/^1: its profile: .*NOWHERE/u)]);
  });

  it('should refuse, in words, an event that cannot follow what stands before it', () => {
    const impossible: Numbered = {
      type: 'touch-captured',
      ...{ seq: 7, t: 1, touch: 0, value: 1, standardUncertainty: 0 },
      ...{ residualSquares: 0, readings: 1, resolution: -1, from: 0, to: 1 },
    };
    expect(() => foldStored(openStored(opened), impossible)).toThrow(
      /^the event with "seq" 7, touch-captured, does not fit the session it stands in/u,
    );
  });
});

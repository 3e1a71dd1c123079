// The eventful session after rework: everything that can be added once the walk is over happens once.
import type { WalkEvent } from '../../src/core/events.js';
import type { Report } from '../../src/core/report/report.js';
import { eventful, opened } from './session-events.js';

/** @param text stands wherever a person or a file gave the words. */
export const reworked = (text: string, name = 'FL1'): readonly WalkEvent[] => [
  ...eventful,
  {
    type: 'session-resumed',
    t: 1200,
    program: '0.1.0',
    wallTime: '2026-01-31T09:35:30.000Z',
    zone: 'Etc/UTC',
    tornBytes: 0,
    work: 'record',
  },
  {
    type: 'heat-cautions-confirmed',
    t: 1201,
    cautions: ['battery', 'cells', 'air', 'esd', 'sheets'],
  },
  { type: 'heat-started', t: 1210, part: name, tool: 'hot-air', setPoint: 330, airflow: 30 },
  {
    type: 'heat-limit-met',
    t: 1235,
    part: name,
    limit: 'run',
    stage: 'near',
    seconds: 25,
    allowed: 30,
  },
  {
    type: 'heat-limit-met',
    t: 1240,
    part: name,
    limit: 'run',
    stage: 'passed',
    seconds: 30,
    allowed: 30,
  },
  { type: 'heat-stopped', t: 1242, part: name, seconds: 32, ended: 'act' },
  {
    type: 'rework-logged',
    t: 1242,
    action: 'reflow',
    part: name,
    tool: 'hot-air',
    setPoint: 330,
    airflow: 30,
    seconds: 32,
  },
  { type: 'rework-logged', t: 1300, action: 'clean', area: name, note: text },
  { type: 'heat-stopped', t: 1310, area: name, seconds: 4, ended: 'lost' },
  {
    type: 'power-checked',
    t: 1600,
    amperes: 0.12,
    volts: 4,
    limit: 0.5,
    draw: 'as-expected',
    note: text,
  },
  { type: 'function-tested', t: 1620, tested: text, works: 'yes', note: text },
  {
    type: 'job-closed',
    t: 1700,
    as: 'repaired',
    reason: text,
    cause: name,
    recheck: { file: text, begins: 'b'.repeat(64) },
  },
  { type: 'session-closed', t: 1700, reason: 'finished' },
];

type Outcome = NonNullable<Report['rechecks'][number]['compared']>['outcome'];

export const recheckOf = (
  outcome: Outcome | null,
  t = 1400,
  file = 'again.jsonl',
): Report['rechecks'][number] => ({
  file,
  fingerprint: 'fedcba9876543210'.repeat(4),
  begins: 'b'.repeat(64),
  opened,
  t,
  compared:
    outcome === null
      ? null
      : {
          type: 'recheck-compared',
          t: 90,
          controls: outcome === 'wait' ? 'moved' : 'as-before',
          press: [{ line: 'D0_P', part: 'FL1', outcome: 'stays' }],
          outcome,
          pins: [
            {
              pin: '2',
              line: 'D0_P',
              because: ['bad', 'part'],
              before: { verdict: 'open', overload: true, standardUncertainty: null },
              after: { verdict: 'normal', value: 388.2, standardUncertainty: 1.2 },
              difference: 'changed',
              score: null,
            },
            {
              pin: '3',
              line: 'D0_N',
              because: ['control'],
              before: { verdict: 'normal', value: 391, standardUncertainty: 1.2 },
              after: { verdict: 'normal', value: 391.4, standardUncertainty: 1.2 },
              difference: 'unchanged',
              score: 0.1,
            },
          ],
        },
});

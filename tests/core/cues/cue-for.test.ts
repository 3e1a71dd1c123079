// Which cue follows which event, in what words: every type of event has its row.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cueFor } from '../../../src/core/cues/cue-for.js';
import { sheet } from '../../../src/core/cues/sheet.js';
import {
  type EventOf,
  type EventType,
  eventBodies,
  holdReasons,
  questions,
  type WalkEvent,
} from '../../../src/core/events.js';
import { actNames, linkChanges } from '../../../src/core/inputs.js';
import { verdicts } from '../../../src/core/verdict.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { tallyPins } from '../../../src/core/walk/tally.js';
import { english } from '../../../src/core/words/english.js';
import { arbitraryEvent } from '../../store/event-arbitrary.js';
import { openedDemo } from './opened-demo.js';

const opened = openedDemo();
const start = openWalk(opened);
const walking = evolve(start, { type: 'pin-reached', t: 1, pin: '7', line: 'GND' });
/** 38 pins told: 36 normal, 2 open. */
const tallied = start.plan.pins.slice(0, 38).reduce<WalkState>(
  (state, { pin, line }, i) =>
    evolve(state, {
      type: 'pin-judged',
      t: 1,
      pin,
      line,
      verdict: i < 2 ? 'open' : 'normal',
      confidence: 1,
      expected: null,
      agreed: true,
    }),
  start,
);
const t = 2;

const pressed = (finding: EventOf<'press-judged'>['finding']): WalkEvent => ({
  type: 'press-judged',
  t,
  line: 'GND',
  part: 'FL2',
  finding,
  cycles: 4,
  pValue: 1 / 70,
  adjustedPValue: 0.03,
  answered: 4,
  pressedValue: 388,
  releasedValue: null,
});
const suspected = (
  where: 'joint' | 'part' | 'lead',
  id: string,
  probability: number,
): EventOf<'suspects-ranked'> => ({
  type: 'suspects-ranked',
  t,
  suspects: [{ where, id, lines: ['LANE2_P'], probability }],
  none: 0,
  other: 0,
  next: null,
});
const at = { t, pin: '8', line: 'LANE2_P' };
const judged = { type: 'pin-judged', ...at, confidence: 1, expected: null } as const;

const resumed: WalkEvent = {
  type: 'session-resumed',
  t,
  program: '',
  wallTime: '',
  zone: '',
  tornBytes: 0,
};

type Row = [event: WalkEvent, kind: string | null, speech?: string];
const rows: readonly Row[] = [
  [opened, 'touch-ground', 'touch ground'],
  [{ ...opened, groundCheck: false }, null],
  [resumed, 'continued', 'going on at seven'],
  [
    { type: 'ground-touched', t, value: 0.2, which: 1 },
    'ground-first',
    'ground; now another ground',
  ],
  [{ type: 'ground-touched', t, value: 0.2, which: 2 }, null],
  [{ type: 'ground-missed', t, value: 400 }, 'ground-missed', 'not ground'],
  [{ type: 'ground-repeated', t, value: 0.3 }, 'touch-ground', 'same ground? lift longer'],
  [{ type: 'ground-checked', t, outcome: 'good' }, 'ground-good', 'ground is good; seven'],
  [{ type: 'ground-checked', t, outcome: 'skipped' }, 'ground-skipped', 'no ground check; seven'],
  [
    { type: 'ground-doubted', t, opens: 2 },
    'ground-doubted',
    'two opens in a row: is the ground clip on?',
  ],
  [{ type: 'pin-reached', ...at }, 'place', 'eight'],
  [{ ...judged, verdict: 'normal', agreed: true }, 'normal', 'eight, normal'],
  [{ ...judged, verdict: 'low', agreed: false }, 'low-again', 'eight, low; again'],
  [{ ...judged, verdict: 'low', agreed: true }, 'low', 'eight, low'],
  [{ ...judged, verdict: 'normal', agreed: false }, 'unsure-again', 'eight, normal; again'],
  [{ type: 'question-asked', t, question: 'open', pin: '8' }, 'question-open', 'eight: open?'],
  [
    { type: 'question-asked', t, question: 'same-or-next', pin: 'A12' },
    'question-same-or-next',
    'same pin, or A-twelve?',
  ],
  [
    { type: 'question-asked', t, question: 'shifted', pin: '8' },
    'question-shifted',
    'shifted? check eight',
  ],
  [{ type: 'question-answered', t, question: 'open', pin: '8', by: 'act' }, null],
  [{ type: 'walk-held', t, reason: 'flag-hold', detail: '' }, 'held', 'held: meter is on hold'],
  [{ type: 'walk-held', t, reason: 'ground-lost', detail: '' }, 'lead-off', 'ground lead off'],
  [{ type: 'walk-freed', t, reason: 'flag-hold' }, 'freed', 'reading again'],
  [{ type: 'walk-paused', t, reason: 'asked' }, 'paused', 'paused'],
  [{ type: 'walk-paused', t, reason: 'link-lost' }, 'link-lost', 'meter gone'],
  [{ type: 'walk-paused', t, reason: 'meter-silent' }, 'meter-silent', 'meter silent'],
  [{ type: 'walk-paused', t, reason: 'file-blocked' }, 'file-blocked', 'file not written'],
  [{ type: 'walk-continued', t, pin: '8' }, 'continued', 'going on at eight'],
  [{ type: 'walk-continued', t, pin: '' }, 'continued', 'going on'],
  [
    { type: 'walk-realigned', t, shift: -1, pin: '8', because: 'fits-better' },
    'realigned',
    'realigned: now at seven; check the last pins',
  ],
  [
    { type: 'walk-finished', t, tally: tallyPins(tallied) },
    'finished',
    'all pins walked: thirty-six normal, two open, two unread',
  ],
  [{ type: 'link-changed', t, change: 'opened' }, null],
  [{ type: 'link-changed', t, change: 'lost' }, 'link-lost', 'meter gone'],
  [{ type: 'link-changed', t, change: 'returned' }, 'link-back', 'meter back'],
  [{ type: 'link-changed', t, change: 'silent' }, 'meter-silent', 'meter silent'],
  [{ type: 'link-changed', t, change: 'failed' }, 'link-lost', 'no meter'],
  [{ type: 'link-changed', t, change: 'ended' }, 'readings-ended', 'no more readings'],
  [{ type: 'file-changed', t, change: 'blocked', detail: '' }, 'file-blocked', 'file not written'],
  [
    { type: 'file-changed', t, change: 'writable', detail: '' },
    'file-written',
    'file written again',
  ],
  [{ type: 'meter-spoke', t, says: 'error', text: '-113' }, 'meter-error', 'meter error'],
  [{ type: 'meter-spoke', t, says: 'identity', text: 'X' }, null],
  [{ type: 'act-taken', t, act: 'note', pin: '8', text: 'x' }, 'heard', 'noted'],
  [
    { type: 'act-refused', t, act: 'open', reason: 'pin 8 shows a reading; skip leaves it unread' },
    'refused',
    'not now: pin 8 shows a reading; skip leaves it unread',
  ],
  [{ type: 'cue-given', t, cue: 'press' }, 'press', 'press'],
  [{ type: 'cue-given', t, cue: 'release' }, 'release', 'release'],
  [
    { type: 'press-begun', t, pin: '8', line: 'GND', places: ['FL2'] },
    'press-begun',
    'press test; hold the probe on eight',
  ],
  [
    { type: 'press-begun', t, pin: '8', line: 'GND', places: [], free: true },
    'press-begun',
    'press when you like; hold eight',
  ],
  [{ type: 'reading-returned', t, line: 'GND', value: 388 }, 'press-reads', 'reads'],
  [{ type: 'reading-lost', t, line: 'GND', value: null }, 'press-lost', 'open'],
  [{ type: 'reading-lost', t, line: 'GND', value: 2.5 }, 'press-lost', 'off'],
  [
    {
      type: 'press-traced',
      t,
      line: 'GND',
      part: 'FL2',
      rests: 'none',
      excursions: [1, 3, 5].map((from) => ({ from, to: from + 1, value: 388 })),
      medianDwell: 1,
      repeats: true,
      marked: null,
    },
    'press-traced',
    'it came back three times, alike each time',
  ],
  [
    { type: 'press-moved', t, place: 'FL2', sham: false, cues: [] },
    'press-place',
    'next: press F-L-two',
  ],
  [
    { type: 'press-moved', t, place: 'bare-board', sham: true, cues: [] },
    'press-sham',
    'next: bare board, beside the part',
  ],
  [pressed('loose'), 'press-answers', 'it reads again: loose joint'],
  [pressed('cracked'), 'press-answers', 'it opens: cracked joint'],
  [pressed('bridged'), 'press-answers', 'it shorts: bridged'],
  [pressed('steady-open'), 'press-nothing', 'stays open'],
  [pressed('steady'), 'press-nothing', 'stays as it is'],
  [pressed('inconclusive'), 'press-unclear', 'no clear answer'],
  [
    {
      type: 'press-compared',
      t,
      line: 'GND',
      outcome: 'one',
      parts: ['FL2'],
      shamPressed: true,
    },
    null,
  ],
  [{ type: 'reply-asked', t, reply: 'open' }, 'reply-asked', 'pad open'],
  [{ type: 'reply-given', t, reply: 'open' }, null],
  [{ type: 'reply-cancelled', t, reply: 'next' }, 'reply-cancelled', 'next taken back'],
  [
    { type: 'reply-shadowed', t, reply: 'press-test' },
    'reply-shadowed',
    'pad press test is off: a line reads like it',
  ],
  [{ type: 'press-ended', t, pin: '8', reason: 'done' }, 'press-ended', 'on to seven'],
  [{ type: 'suspects-ranked', t, suspects: [], none: 1, other: 0, next: null }, null],
  [suspected('joint', 'FL3 pad 1', 0.8), 'suspect', 'suspect: F-L-three pad one'],
  [suspected('joint', 'FL3 pad 1', 0.4), null],
  [{ ...suspected('part', 'FL3', 0.8), quiet: true }, null],
  [suspected('lead', 'ground-clip', 0.9), 'ground-doubted', 'look at the ground clip first'],
  [
    { type: 'question-asked', t, question: 'open', pin: '8', place: { part: 'FL3', side: 'far' } },
    'question-open',
    'F-L-three far side: open?',
  ],
  [
    { type: 'probe-begun', t, probe: 'place', line: 'D0_P', part: 'FL3', side: 'near' },
    'probe-place',
    'probe F-L-three near side',
  ],
  [
    { type: 'probe-begun', t, probe: 'retake', line: 'D0_P', pin: '8' },
    'probe-place',
    'again: eight',
  ],
  [
    {
      type: 'place-judged',
      t,
      line: 'D0_P',
      part: null,
      side: 'chip',
      value: 388,
      standardUncertainty: 1,
      readings: 9,
      function: 'resistance',
      from: 1,
      to: 2,
      verdict: 'normal',
      confidence: 0.99,
      expected: null,
    },
    'normal',
    'at the chip, normal',
  ],
  [{ type: 'probe-ended', t, reason: 'done' }, null],
  [{ type: 'reading-taken', t, function: 'resistance', value: 388 }, null],
  [
    {
      type: 'touch-captured',
      t,
      touch: 0,
      value: 388,
      standardUncertainty: 1,
      residualSquares: 0,
      readings: 9,
      resolution: 0.1,
      from: 1,
      to: 2,
    },
    null,
  ],
  [
    {
      type: 'pin-settled',
      ...at,
      touch: 0,
      value: 388,
      standardUncertainty: 1,
      readings: 9,
      function: 'resistance',
      from: 1,
      to: 2,
    },
    null,
  ],
  [{ type: 'heat-cautions-confirmed', t, cautions: ['battery'] }, null],
  [{ type: 'heat-started', t, part: 'FL2' }, 'heat-on', 'heat on, F-L-two'],
  [
    { type: 'heat-stopped', t, part: 'FL2', seconds: 21.6, ended: 'act' },
    'heat-off',
    'heat off, twenty-two seconds',
  ],
  [{ type: 'heat-stopped', t, part: 'FL2', seconds: 21.6, ended: 'lost' }, null],
  [
    { type: 'heat-limit-met', t, limit: 'run', stage: 'near', seconds: 25, allowed: 30 },
    'heat-near',
    'nearly at the limit',
  ],
  [
    { type: 'heat-limit-met', t, limit: 'run', stage: 'passed', seconds: 30, allowed: 30 },
    'heat-passed',
    'past the limit: take heat away',
  ],
  [{ type: 'rework-logged', t, action: 'reflow', part: 'FL2' }, 'heard', 'noted'],
  [{ type: 'power-checked', t, draw: 'as-expected' }, null],
  [{ type: 'function-tested', t, tested: 'picture', works: 'yes' }, null],
  [{ type: 'job-closed', t, as: 'repaired' }, null],
  [{ type: 'control-compared', t, pin: '8', line: 'GND', outcome: 'as-before', score: 0.2 }, null],
  [
    { type: 'control-compared', t, pin: '8', line: 'GND', outcome: 'moved', score: 3 },
    'control-moved',
    'eight was not touched and has moved: warm or wet, wait',
  ],
  [
    { type: 'recheck-compared', t, pins: [], controls: 'as-before', press: [], outcome: 'good' },
    'recheck-good',
    'recheck good',
  ],
  [
    { type: 'recheck-compared', t, pins: [], controls: 'moved', press: [], outcome: 'wait' },
    'recheck-not-good',
    'recheck: wait, the board is warm or wet',
  ],
  [{ ...judged, type: 'pin-judged', verdict: 'low', agreed: true, anew: true }, null],
  [{ type: 'shift-estimated', t, lines: 'signal', shift: null }, null],
  [{ type: 'ready-asked', t, step: 'lead-zero' }, 'touch-ground', 'hold the probe tips together'],
  [{ type: 'ready-asked', t, step: 'reference' }, 'touch-ground', 'touch the reference'],
  [
    {
      ...{ type: 'lead-zeroed', t, ohms: 0.21, standardUncertainty: 0.01 },
      ...{ degreesOfFreedom: 9, readings: 10 },
    },
    'ground-good',
    'leads zeroed',
  ],
  [
    { type: 'lead-zero-refused', t, refused: { because: 'not-touching' } },
    'ground-missed',
    'leads not zeroed',
  ],
  [
    {
      ...{ type: 'reference-checked', t, known: { value: 100, tolerance: 0.01 } },
      ...{ value: 100.2, standardUncertainty: 0.2, outcome: { ok: true, error: 0.2, limit: 1.4 } },
    },
    'ground-good',
    'reference good',
  ],
  [
    {
      ...{ type: 'reference-checked', t, known: { value: 100, tolerance: 0.01 } },
      ...{ value: 106, standardUncertainty: 0.2 },
      outcome: { ok: false, because: 'reads-high', error: 6, limit: 1.4 },
    },
    'ground-missed',
    'the meter is off',
  ],
  [{ type: 'ready-left', t, step: 'reference' }, null],
  [{ type: 'intake-noted', t, symptom: 'no picture' }, null],
  [{ type: 'photo-attached', t, file: 'board.png', sha256: '0'.repeat(64), bytes: 1 }, null],
  [{ type: 'caution-confirmed', t, caution: 'power', says: 'off', by: 'keyboard' }, null],
  [{ type: 'residual-measured', t, line: 'VDD', volts: 0.01, limit: 0.05, by: 'meter' }, null],
  [{ type: 'residual-skipped', t, reason: 'demo' }, null],
  [{ type: 'symptom-observed', t, observation: 'lights', asks: 'Lights?', answer: 'yes' }, null],
  [
    {
      type: 'groups-proposed',
      t,
      symptoms: [],
      other: 1,
      walkFirst: [],
      leaveAlone: [],
      because: [],
      next: null,
    },
    null,
  ],
  [{ type: 'session-closed', t, reason: 'left' }, null],
];

describe('cueFor', () => {
  it.each(rows)('should answer %o with the cue %s', (event, kind, speech) => {
    const cue = cueFor(event, walking, english);
    expect(cue?.kind ?? null).toBe(kind);
    if (kind !== null) expect(cue?.speech).toBe(speech);
  });

  it('should have been asked about every type of event', () => {
    const asked = new Set(rows.map(([{ type }]) => type));
    const all: EventType[] = [...(Object.keys(eventBodies) as EventType[]), 'reading-taken'];
    expect(all.filter((type) => !asked.has(type))).toEqual([]);
  });

  it('should have a tone for each verdict, question, hold, link change and act, and words for each', () => {
    const events: readonly WalkEvent[] = [
      ...verdicts.flatMap((verdict) =>
        [true, false].map((agreed): WalkEvent => ({ ...judged, verdict, agreed })),
      ),
      ...questions.map(
        (question): WalkEvent => ({ type: 'question-asked', t, question, pin: '8' }),
      ),
      ...holdReasons.map((reason): WalkEvent => ({ type: 'walk-held', t, reason, detail: '' })),
      ...linkChanges
        .filter((change) => change !== 'opened')
        .map((change): WalkEvent => ({ type: 'link-changed', t, change })),
      ...actNames.map((act): WalkEvent => ({ type: 'act-taken', t, act })),
    ];
    expect(events).toHaveLength(16 + 4 + 7 + 5 + 17);
    const said = events.map((event) => cueFor(event, walking, english));
    expect(
      said.filter((cue) => cue === null || cue.tone.length === 0 || cue.speech === ''),
    ).toEqual([]);
  });

  it('should ask for ground again where a session is resumed in the ground check', () => {
    expect(cueFor(resumed, start, english)?.kind).toBe('touch-ground');
  });

  it('should stay plain whatever a file holds', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(arbitraryEvent, (event) => {
        const cue = cueFor(event, walking, english);
        if (cue === null) return;
        kinds.add(cue.kind);
        expect(cue.tone).toBe(sheet[cue.kind].tone);
        expect(cue.speech).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N},.:;?' -]{0,159}$/u);
      }),
      { seed: 11, numRuns: 2000 },
    );
    expect(kinds.size).toBeGreaterThan(30);
  });
});

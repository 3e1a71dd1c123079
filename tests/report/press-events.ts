// A press test as a session tells it: cues each second and a half, readings five a second, and a joint that closes
// 0.3 s after it is pressed, or one that does not care.
import type { EventOf, WalkEvent } from '../../src/core/events.js';

const cycles = 4;
const cycleS = 3;
const lagS = 0.3;

export interface PressTold {
  readonly t: number;
  readonly line: string;
  readonly part: string;
  readonly sham: boolean;
  readonly answers: boolean;
}

export const pressTest = ({ t, line, part, sham, answers }: PressTold): readonly WalkEvent[] => {
  const cues: EventOf<'press-moved'>['cues'] = [];
  for (let n = 0; n < cycles; n += 1) {
    cues.push({ t: t + 2 + n * cycleS, cue: 'press' });
    cues.push({ t: t + 2 + n * cycleS + cycleS / 2, cue: 'release' });
  }
  const end = t + 2 + cycles * cycleS;
  const readings: WalkEvent[] = [];
  for (let at = t + 0.2; at < end; at += 0.2) {
    const last = cues.findLast((cue) => cue.t + lagS <= at);
    const closed = answers && last?.cue === 'press';
    readings.push({
      type: 'reading-taken',
      t: Math.round(at * 10) / 10,
      function: 'resistance',
      ...(closed ? { value: 389.4 } : { overload: true }),
    });
  }
  const given: WalkEvent[] = cues.map(({ t: at, cue }) => ({
    type: 'cue-given',
    t: at,
    cue,
    place: part,
  }));
  const middle = [...readings, ...given].sort((a, b) => a.t - b.t);
  return [
    { type: 'press-moved', t, place: part, sham, cues },
    ...middle,
    {
      type: 'press-judged',
      t: end,
      line,
      part,
      finding: answers ? 'loose' : 'steady-open',
      cycles,
      pValue: answers ? 1 / 70 : 1,
      adjustedPValue: answers ? 0.0275 : 1,
      answered: answers ? 4 : 0,
      pressedValue: answers ? 389.4 : null,
      releasedValue: null,
    },
  ];
};

/** A loose filter, bare board for comparison, and what follows from both. */
export const looseFilter = (t: number): readonly WalkEvent[] => [
  { type: 'press-begun', t, pin: '2', line: 'D0_P', places: ['FL1'] },
  ...pressTest({ t, line: 'D0_P', part: 'FL1', sham: false, answers: true }),
  ...pressTest({ t: t + 15, line: 'D0_P', part: 'bare-board', sham: true, answers: false }),
  {
    type: 'press-compared',
    t: t + 29,
    line: 'D0_P',
    outcome: 'one',
    parts: ['FL1'],
    shamPressed: true,
  },
  { type: 'press-ended', t: t + 29, pin: '2', reason: 'done' },
  {
    type: 'suspects-ranked',
    t: t + 29,
    suspects: [
      { where: 'joint', id: 'FL1 pad 1', lines: ['D0_P'], probability: 0.81 },
      { where: 'part', id: 'FL1', lines: ['D0_P', 'D0_N'], probability: 0.12 },
      { where: 'chip', id: 'U2', lines: ['D0_P'], probability: 0.03 },
      { where: 'lead', id: 'ground-clip', lines: ['D0_P'], probability: 0.02 },
    ],
    none: 0.004,
    other: 0.02,
    next: { probe: 'place', line: 'D0_P', part: 'FL1', side: 'far', gain: 0.5, effort: 1.5 },
  },
];

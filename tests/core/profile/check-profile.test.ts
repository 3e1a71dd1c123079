import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/core/problems.js';
import { readProfile } from '../../support/read-profile.js';

type Json = Record<string, unknown>;

const filter = { kind: 'filter', lines: ['D0_P', 'D0_N'] };
const signal = (mate: string, more: Json = {}): Json => ({
  kind: 'signal',
  group: 'data',
  mate,
  expect: { resistance: { nominal: 388, tolerance: 0.1 } },
  ...more,
});

const profile = (change: Json = {}): Json => ({
  format: 'pinwalk-profile/1',
  id: 'small',
  title: 'Small',
  provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: { id: 'J1', pins: pins('GND', 'D0_P', 'D0_N', 'GND') },
  lines: { GND: { kind: 'ground' }, D0_P: signal('D0_N'), D0_N: signal('D0_P') },
  parts: { FL2: filter },
  ...change,
});

const pins = (...lines: string[]): Json[] =>
  lines.map((line, index) => ({ pin: String(index + 1), line }));

const withLines = (lines: Json, more: Json = {}): Json =>
  profile({
    lines: { GND: { kind: 'ground' }, D0_P: signal('D0_N'), D0_N: signal('D0_P'), ...lines },
    ...more,
  });

const problemsOf = (value: Json): string[] =>
  readProfile(JSON.stringify(value)).problems.map((problem) => formatProblem('F', problem));

describe('a sound profile', () => {
  it('should give no problem', () => {
    expect(problemsOf(profile())).toEqual([]);
    expect(readProfile(JSON.stringify(profile())).content?.id).toBe('small');
  });

  it('should be allowed to be the least that the format asks for', () => {
    const least = profile();
    delete least.parts;
    expect(problemsOf(least)).toEqual([]);
  });
});

describe('a profile with a slip', () => {
  const cases: [string, Json, RegExp[]][] = [
    [
      'a pin on a line that is not there',
      profile({ connector: { id: 'J1', pins: pins('GND', 'D0_P', 'D0_X', 'GND') } }),
      [
        /error: connector\.pins\[2\]\.line: there is no line "D0_X"; did you mean "D0_P"\?/,
        /warning: lines\.D0_N: no pin carries the line "D0_N"/,
      ],
    ],
    [
      'a pin on a name every object has',
      profile({ connector: { id: 'J1', pins: pins('GND', 'D0_P', 'D0_N', 'constructor', 'GND') } }),
      [/error: connector\.pins\[3\]\.line: there is no line "constructor"/],
    ],
    [
      'two pins of one name',
      profile({
        connector: {
          id: 'J1',
          pins: [...pins('GND', 'D0_P', 'D0_N', 'GND'), { pin: '2', line: 'GND' }],
        },
      }),
      [/error: connector\.pins\[4\]\.pin: pin "2" is here a second time, first as entry 2/],
    ],
    [
      'one ground pin',
      profile({ connector: { id: 'J1', pins: pins('GND', 'D0_P', 'D0_N') } }),
      [/warning: connector\.pins: only one pin is on a line of kind "ground"/],
    ],
    [
      'rows at some pins',
      profile({
        connector: {
          id: 'J1',
          pins: pins('GND', 'D0_P', 'D0_N', 'GND').map((pin, at) =>
            at > 1 ? pin : { ...pin, row: 1 },
          ),
        },
      }),
      [/warning: connector\.pins: only 2 of 4 pins say their row/],
    ],
    [
      'a mate that is not there',
      withLines({ D0_N: signal('D0P') }),
      [
        /error: lines\.D0_N\.mate: there is no line "D0P"; did you mean "D0_P"\?/,
        /error: lines\.D0_P\.mate: "D0_N" does not name this line as its mate, but "D0P"/,
      ],
    ],
    [
      'a mate that does not answer',
      withLines({ D0_N: { kind: 'signal' } }),
      [/error: lines\.D0_P\.mate: "D0_N" does not name this line as its mate, but none/],
    ],
    [
      'a line that mates itself',
      withLines({ D0_N: signal('D0_N') }),
      [
        /error: lines\.D0_N\.mate: the line is its own mate/,
        /error: lines\.D0_P\.mate: "D0_N" does not name this line/,
      ],
    ],
    [
      'a group that is not listed',
      profile({ groups: { date: { title: 'Data' } } }),
      [
        /error: lines\.D0_P\.group: there is no group "data"; did you mean "date"\?/,
        /error: lines\.D0_N\.group: there is no group "data"/,
      ],
    ],
    [
      'a part on a line that is not there',
      profile({ parts: { FL2: { kind: 'filter', lines: ['D0_P', 'D1_N'] } } }),
      [/error: parts\.FL2\.lines\[1\]: there is no line "D1_N"; did you mean "D0_N"\?/],
    ],
    [
      'a part that lists a line twice, and one on no line',
      profile({
        parts: {
          FL2: { kind: 'filter', lines: ['D0_P', 'D0_P'] },
          R1: { kind: 'resistor', lines: [] },
        },
      }),
      [
        /error: parts\.FL2\.lines\[1\]: the line is listed twice/,
        /warning: parts\.R1\.lines: the part is on no line/,
      ],
    ],
    [
      'a chain through a part that is not there',
      withLines({
        D0_P: signal('D0_N', { chain: [{ joint: 'pin 2' }, { part: 'FL3' }, { part: 'FL2' }] }),
      }),
      [/error: lines\.D0_P\.chain\[1\]\.part: there is no part "FL3"; did you mean "FL2"\?/],
    ],
    [
      'a chain through a part that does not list the line',
      withLines(
        { D0_P: signal('D0_N', { chain: [{ shunt: { part: 'TV1' } }, { part: 'FL2' }] }) },
        { parts: { FL2: filter, TV1: { kind: 'diode', lines: ['D0_N'] } } },
      ),
      [/error: lines\.D0_P\.chain\[0\]\.shunt\.part: the part "TV1" does not list the line "D0_P"/],
    ],
    [
      'a part that lists a line whose chain misses it',
      withLines({ D0_P: signal('D0_N', { chain: [{ joint: 'pin 2' }, { chip: 'U1' }] }) }),
      [/warning: parts\.FL2\.lines\[0\]: the chain of "D0_P" does not pass the part "FL2"/],
    ],
    [
      'symptoms with slips',
      profile({
        symptoms: [
          { id: 'dark', says: 'no light', walkFirst: ['dtaa'] },
          { id: 'dark', says: 'no light', walkFirst: ['data'], leaveAlone: ['data'] },
        ],
      }),
      [
        /error: symptoms\[0\]\.walkFirst\[0\]: there is no group "dtaa"; did you mean "data"\?/,
        /error: symptoms\[1\]\.id: the symptom "dark" is here a second time/,
        /error: symptoms\[1\]\.leaveAlone\[0\]: the group "data" is to be walked first and left alone/,
      ],
    ],
    [
      'limits the wrong way round',
      withLines({ D0_P: signal('D0_N', { limits: { short: 50, open: 50 } }) }),
      [
        /error: lines\.D0_P\.limits: "short" \(50\) is not under "open" \(50\)/,
        /warning: lines\.D0_P\.expect\.resistance: a good "D0_P" may read 426.8 Ω, which counts as open/,
      ],
    ],
    [
      'a supply that would be judged short when good',
      withLines({
        D0_P: signal('D0_N', {
          kind: 'supply',
          expect: { resistance: { nominal: 5.2, tolerance: 0.2 } },
        }),
      }),
      [
        /warning: lines\.D0_P\.expect\.resistance: a good "D0_P" may read 4.16 Ω, which counts as a short \(5 Ω/,
      ],
    ],
    [
      'values for another function only',
      withLines({ D0_P: signal('D0_N', { expect: { diode: { nominal: 0.47, tolerance: 0.1 } } }) }),
      [
        /warning: lines\.D0_P\.expect: nothing is expected in resistance, which this profile measures/,
      ],
    ],
    [
      'a value for the other polarity',
      withLines({
        D0_P: signal('D0_N', {
          expect: { resistance: { nominal: 388, tolerance: 0.1, polarity: 'black-walks' } },
        }),
      }),
      [/warning: lines\.D0_P\.expect\.resistance\.polarity: the value holds for black-walks/],
    ],
    [
      'a value for another range',
      withLines(
        {
          D0_P: signal('D0_N', {
            expect: { resistance: { nominal: 388, tolerance: 0.1, range: 6000 } },
          }),
        },
        { measure: { function: 'resistance', polarity: 'red-walks', range: 600 } },
      ),
      [/warning: lines\.D0_P\.expect\.resistance\.range: the value holds on range 6000/],
    ],
    [
      'a diode value in millivolt',
      withLines({
        D0_P: signal('D0_N', {
          expect: {
            resistance: { nominal: 388, tolerance: 0.1 },
            diode: { nominal: 470, tolerance: 0.1 },
          },
        }),
      }),
      [
        /warning: lines\.D0_P\.expect\.diode\.nominal: 470 V is no diode drop; .* did you mean 0.47\?/,
      ],
    ],
    [
      'a title that acts on a terminal',
      profile({ title: 'Hello \u001b[2J' }),
      [/warning: title: the text holds characters that cannot be seen or that act on a terminal/],
    ],
    [
      'an id that leaves the folder',
      profile({ id: '../../x' }),
      [/error: id: this id cannot be the name of a file/],
    ],
    ['an id that is a device elsewhere', profile({ id: 'con' }), [/error: id: this id cannot be/]],
  ];

  it.each(cases)('should name %s', (_, value, says) => {
    const problems = problemsOf(value);
    expect(problems).toHaveLength(says.length);
    for (const pattern of says) expect(problems).toContainEqual(expect.stringMatching(pattern));
  });
});

describe('the line of a problem', () => {
  it('should be where the name stands in the file', () => {
    const text = JSON.stringify(withLines({ D0_N: signal('D0P') }), null, 2);
    const [problem] = readProfile(text).problems.filter(({ path }) => path[1] === 'D0_N');
    expect(text.split('\n')[(problem?.line ?? 0) - 1]).toContain('"mate": "D0P"');
  });
});

const shipped = readdirSync('profiles').filter((name) =>
  /^(?!.*\.schema\.json$).*\.json$/u.test(name),
);

describe('the shipped profiles', () => {
  it('should be at least two', () => {
    expect(shipped.length).toBeGreaterThanOrEqual(2);
  });

  it.each(shipped)('should leave nothing to say about %s', (name) => {
    const { content, problems } = readProfile(readFileSync(`profiles/${name}`, 'utf8'));
    expect(problems).toEqual([]);
    expect(`${content?.id}.json`).toBe(name);
  });
});

// Every slip a newcomer can make in a driver file beyond the schema, each named where it stands.
import { describe, expect, it } from 'vitest';
import { checkDriver, functionsOf } from '../../../src/core/meter/check-driver.js';
import { type Driver, driverFormat } from '../../../src/core/meter/driver-format.js';
import { shippedDriver } from '../../support/driver-files.js';

/** A driver without types, so that it can be spoilt in every way JSON can. */
// biome-ignore lint/suspicious/noExplicitAny: the point is to write what the types forbid.
type Loose = any;

/** A loose copy to spoil, taken through the schema again so that only what the schema lets pass is checked. */
const spoilt = (id: string, spoil: (driver: Loose) => void): Driver => {
  const copy = structuredClone(shippedDriver(id));
  spoil(copy);
  return driverFormat.parse(copy);
};
const problemsOf = (id: string, spoil: (driver: Loose) => void): [string, string][] =>
  checkDriver(spoilt(id, spoil)).map(({ path, what }) => [path.join('.'), what]);

const slips: readonly [string, string, (driver: Loose) => void, string, string][] = [
  [
    'a function without accuracy',
    'scpi-read',
    (d) => {
      d.accuracy = d.accuracy.filter((row: Loose) => row.function !== 'diode');
    },
    'accuracy',
    'no accuracy row for diode, which the driver offers',
  ],
  [
    'an accuracy row given twice',
    'scpi-read',
    (d) => {
      d.accuracy.push({ ...d.accuracy[0] });
    },
    'accuracy.14',
    'resistance at 100 stands twice',
  ],
  [
    'a full scale in kilohm',
    'stream-value-unit',
    (d) => {
      d.displayCounts = 600;
    },
    'accuracy.0.resolution',
    "600 in steps of 0.1 is 6000 counts, more than the display's 600",
  ],
  [
    'no function at all',
    'scpi-read',
    (d) => {
      d.talk.functions = {};
    },
    'talk.functions',
    'no function is offered',
  ],
  [
    'a range command without its place',
    'scpi-read',
    (d) => {
      d.talk.functions.resistance.range.command = 'CONF:RES';
    },
    'talk.functions.resistance.range.command',
    'the command must hold {range} once',
  ],
  [
    'a range without accuracy',
    'scpi-read',
    (d) => {
      d.talk.functions.resistance.range.fullScales.push(1e9);
    },
    'talk.functions.resistance.range.fullScales.7',
    'no accuracy row for resistance at 1000000000',
  ],
  [
    'a function query that asks nothing',
    'scpi-read',
    (d) => {
      d.talk.functionQuery.send = 'FUNC';
    },
    'talk.functionQuery.send',
    'the function query asks nothing',
  ],
  [
    'a function query without an answer for what is measured',
    'scpi-read',
    (d) => {
      d.talk.functionQuery.answers = { RES: 'resistance', DIOD: 'diode', CONT: 'continuity' };
    },
    'talk.functionQuery.answers',
    'no answer stands for dc-volts',
  ],
  [
    'a read command that asks nothing',
    'scpi-read',
    (d) => {
      d.talk.functions.diode.read = ['READ'];
    },
    'talk.functions.diode.read.0',
    'the last read command asks nothing',
  ],
  [
    'a broken identity pattern',
    'scpi-read',
    (d) => {
      d.talk.recognise = 'ACME(?=,)';
    },
    'talk.recognise',
    'error parsing regexp: invalid or unsupported Perl syntax: `(?=`',
  ],
  [
    'no line grammar',
    'key-request',
    (d) => {
      delete d.line;
      delete d.speak;
    },
    'line',
    'a meter that talks by key needs a line grammar',
  ],
  [
    'a pattern that does not compile',
    'key-request',
    (d) => {
      d.line.pattern = '(?P<value>[';
    },
    'line.pattern',
    'error parsing regexp: missing closing ]: `[`',
  ],
  [
    'a pattern without a value',
    'stream-value-unit',
    (d) => {
      d.line.pattern = '(?P<unit>.*)';
    },
    'line.pattern',
    'the pattern has no group named value',
  ],
  [
    'a group that means nothing',
    'stream-value-unit',
    (d) => {
      d.line.pattern += '(?P<colour>.*)';
    },
    'line.pattern',
    'group colour means nothing',
  ],
  [
    'a group without its table',
    'stream-value-unit',
    (d) => {
      d.line.pattern += '(?P<flags>.*)';
    },
    'line',
    'the pattern has a group flags but there is no table flags',
  ],
  [
    'a table without its group',
    'stream-value-unit',
    (d) => {
      d.line.functions = { R: 'resistance' };
    },
    'line.functions',
    'there is a table functions but the pattern has no group function',
  ],
  [
    'a range code without accuracy',
    'stream-range-code',
    (d) => {
      d.line.ranges.R0.fullScale = 4;
    },
    'line.ranges.R0',
    'no accuracy row has full scale 4 in steps of 0.01',
  ],
  [
    'a unit of two quantities',
    'stream-value-unit',
    (d) => {
      d.line.units.V.functions.push('resistance');
    },
    'line.units.V.functions',
    'one unit cannot be both ohm and volt',
  ],
  [
    'a bench that says what the driver cannot read',
    'stream-value-unit',
    (d) => {
      d.speak.line = '{value}{unit}';
    },
    'speak',
    'resistance at 600 would be said as "  200.0Ohm", which reads back as {"t":0,"fault":"not understood: \\"  200.0Ohm\\""}',
  ],
  [
    'a bench without a range code for a range',
    'stream-range-code',
    (d) => {
      delete d.line.ranges.R1;
    },
    'speak',
    'resistance at 4000 cannot be said: no range code for resistance at 4000 in steps of 0.1',
  ],
  [
    'a unit the wire cannot carry',
    'stream-value-unit',
    (d) => {
      d.line.units.Ω = { factor: 1, functions: ['resistance'] };
    },
    'line.units',
    '"Ω" cannot be sent in ascii',
  ],
  [
    'an overload word the wire cannot carry',
    'stream-decimal-comma',
    (d) => {
      d.line.overload.texts.push('∞');
    },
    'line.overload',
    '"∞" cannot be sent in latin1',
  ],
];

describe('checkDriver', () => {
  it.each(slips)('should find %s', (_, id, spoil, path, what) => {
    expect(problemsOf(id, spoil)).toContainEqual([path, what]);
  });

  it('should say what to do about each', () => {
    for (const [, id, spoil] of slips) {
      const problems = checkDriver(spoilt(id, spoil));
      expect(problems.length).toBeGreaterThan(0);
      for (const { fix } of problems) expect(fix).not.toBe('');
    }
  });

  it('should let a driver pass that leaves the bench out', () => {
    expect(
      problemsOf('stream-value-unit', (d) => {
        delete d.speak;
      }),
    ).toEqual([]);
  });
});

describe('functionsOf', () => {
  it('should gather functions from talk, codes, units and ranges', () => {
    expect(
      functionsOf(
        spoilt('scpi-read', (d) => {
          delete d.talk.functions.continuity;
        }),
      ),
    ).toEqual(['resistance', 'diode', 'dc-volts']);
    expect(
      functionsOf(
        spoilt('stream-range-code', (d) => {
          delete d.line.ranges.D0;
        }),
      ),
    ).toEqual(['resistance', 'continuity', 'dc-volts']);
  });
});

describe('the driver format', () => {
  it.each([
    [
      'a mistyped key',
      (d: Loose) => {
        d.talk.polS = 1;
      },
    ],
    [
      'a name in capitals',
      (d: Loose) => {
        d.id = 'SCPI_Read';
      },
    ],
    [
      'an unknown talk',
      (d: Loose) => {
        d.talk.style = 'smoke';
      },
    ],
    [
      'a negative accuracy',
      (d: Loose) => {
        d.accuracy[0].percent = -1;
      },
    ],
    [
      'a newer format',
      (d: Loose) => {
        d.format = 'pinwalk-driver/2';
      },
    ],
    [
      'a line longer than any meter sends',
      (d: Loose) => {
        d.wire.maxFrame = 1e6;
      },
    ],
  ])('should refuse %s', (_, spoil) => {
    expect(() => spoilt('scpi-read', spoil)).toThrow();
  });
});

// The imitated SCPI meter: what it understands, what it answers, what it queues as an error.
import { describe, expect, it } from 'vitest';
import { compileDriver } from '../../../src/core/meter/compile-driver.js';
import { parseErrorEntry } from '../../../src/core/meter/error-entry.js';
import { type ScpiWorld, scpiResponder } from '../../../src/core/meter/scpi-responder.js';
import { type MeasureFunction, measureFunctions } from '../../../src/core/reading.js';
import { driverIds, shippedDriver } from '../../support/driver-files.js';

const values: Readonly<Record<MeasureFunction, number>> = {
  resistance: 388,
  diode: 0.5,
  continuity: 12,
  'dc-volts': 3.3,
};

/** A world that stands still, and writes down what it was asked for. */
const talkTo = (id: string) => {
  const meter = scpiResponder(shippedDriver(id));
  const sensed: [MeasureFunction, number | null][] = [];
  const world: ScpiWorld = {
    identity: 'PINWALK,VIRTUAL METER,0,1',
    sense: (measure, range) => {
      sensed.push([measure, range]);
      return {
        reading: { t: 0, function: measure, value: values[measure] },
        display: { fullScale: range ?? 1000, resolution: 0.001 },
      };
    },
  };
  let { start: state } = meter;
  const say = (line: string): string | null => {
    const step = meter.answer(state, line, world);
    state = step.state;
    return step.answer;
  };
  return { say, sensed, state: () => state };
};

describe('a meter asked with READ?', () => {
  it('should say who it is and that nothing is wrong', () => {
    const { say } = talkTo('scpi-read');
    expect(say('*IDN?')).toBe('PINWALK,VIRTUAL METER,0,1');
    expect(say('SYST:ERR?')).toBe('+0,"No error"');
    expect(say('*OPC?')).toBe('1');
  });

  it('should measure the function and range last set', () => {
    const { say, sensed } = talkTo('scpi-read');
    expect(say('READ?')).toBe('+3.88000000E+02');
    expect(say('CONF:VOLT:DC')).toBeNull();
    expect(say('READ?')).toBe('+3.30000000E+00');
    expect(say('CONF:RES 1000')).toBeNull();
    say('READ?');
    say('CONF:RES');
    say('READ?');
    expect(sensed).toEqual([
      ['resistance', null],
      ['dc-volts', null],
      ['resistance', 1000],
      ['resistance', null],
    ]);
  });

  it('should read ranges with suffixes and take the lowest that holds the value', () => {
    const { say, state } = talkTo('scpi-read');
    say('CONFigure:RESistance 0.5 MOHM');
    expect(state().ranges).toEqual({ resistance: 1e6 });
    say('CONF:RES 100');
    expect(state().ranges).toEqual({ resistance: 100 });
  });

  it('should answer several queries of one line together', () => {
    const { say } = talkTo('scpi-read');
    expect(say('*CLS;CONF:DIOD;READ?;SYST:ERR?')).toBe('+5.00000000E-01;+0,"No error"');
  });

  it('should reset to its start, keeping the errors', () => {
    const { say, state } = talkTo('scpi-read');
    say('CONF:VOLT:DC 10');
    say('RUBBISH');
    say('*RST');
    expect(state()).toMatchObject({ function: 'resistance', ranges: {} });
    expect(say('SYST:ERR?')).toBe('-113,"Undefined header"');
  });
});

// The order of the queue, what clears it and the entry of an overflow: Keysight 81160A p. 504 (seen).
describe('the error queue', () => {
  it.each([
    ['RUBBISH', '-113,"Undefined header"'],
    ['MEAS:RES?', '-113,"Undefined header"'],
    ['CONF:RES lots', '-104,"Data type error"'],
    ['CONF:RES 1e12', '-222,"Data out of range"'],
    ['CONF:DIOD 7', '-224,"Illegal parameter value"'],
    ['READ? 5', '-224,"Illegal parameter value"'],
  ])('should hold the error of %s and answer nothing', (line, entry) => {
    const { say } = talkTo('scpi-read');
    expect(say(line)).toBeNull();
    expect(say('SYSTem:ERRor:NEXT?')).toBe(entry);
    expect(say('SYST:ERR?')).toBe('+0,"No error"');
    expect(parseErrorEntry(entry)).not.toBeNull();
  });

  it('should miss a parameter', () => {
    const { say } = talkTo('scpi-initiate-fetch');
    say('SENS:RES:RANG');
    expect(say('SYST:ERR?')).toBe('-109,"Missing parameter"');
  });

  it('should give errors in the order they came, until *CLS', () => {
    const { say } = talkTo('scpi-read');
    say('RUBBISH;CONF:RES 1e12;*IDN');
    expect(say('SYST:ERR?')).toBe('-113,"Undefined header"');
    expect(say('SYST:ERR?')).toBe('-222,"Data out of range"');
    say('*CLS');
    expect(say('SYST:ERR?')).toBe('+0,"No error"');
  });

  it('should say in its last entry that it overflowed', () => {
    const { say, state } = talkTo('scpi-read');
    for (let i = 0; i < 40; i += 1) say('CONF:RES 1e12');
    const { errors } = state();
    expect(errors.slice(0, -1).every(({ code }) => code === -222)).toBe(true);
    expect(errors.at(-1)).toEqual({ code: -350, text: 'Queue overflow' });
    expect(errors.length).toBeLessThan(40);
  });
});

describe('a meter with separate initiate and fetch', () => {
  it('should answer a fetch with what was measured at the trigger', () => {
    const { say, sensed } = talkTo('scpi-initiate-fetch');
    expect(say('INITiate')).toBeNull();
    expect(sensed).toEqual([['resistance', null]]);
    expect(say('FETCh?')).toBe('+3.880000000E+02');
    expect(say('FETC?')).toBe('+3.880000000E+02');
    expect(sensed).toHaveLength(1);
  });

  it('should have nothing to fetch before a trigger or after a change of function', () => {
    const { say } = talkTo('scpi-initiate-fetch');
    expect(say('FETC?')).toBeNull();
    expect(say('SYST:ERR?')).toBe('-230,"Data corrupt or stale"');
    say('INIT;SENS:FUNC "VOLT"');
    expect(say('FETC?')).toBeNull();
  });

  it('should keep the range of each function', () => {
    const { say, sensed } = talkTo('scpi-initiate-fetch');
    say('SENS:FUNC "RES";SENS:RES:RANG 1E4;SENS:VOLT:RANG 10;INIT');
    expect(sensed).toEqual([['resistance', 1e4]]);
  });
});

describe('a meter that knows MEASure alone', () => {
  it('should change function by the question itself', () => {
    const { say, sensed } = talkTo('scpi-measure');
    expect(say('MEASure:VOLTage:DC?')).toBe('+  3.3000E+00');
    expect(say('meas:res?')).toBe('+  3.8800E+02');
    expect(say('READ?')).toBeNull();
    expect(sensed).toEqual([
      ['dc-volts', null],
      ['resistance', null],
    ]);
  });
});

const scpiIds = driverIds.filter((id) => shippedDriver(id).talk.style === 'scpi');

describe.each(scpiIds)('the meter of %s', (id) => {
  it('should understand everything its driver sends, and be read back', () => {
    const driver = shippedDriver(id);
    if (driver.talk.style !== 'scpi') throw new Error('not SCPI');
    const { talk } = driver;
    const { say } = talkTo(id);
    for (const line of [...talk.init, talk.keepAwake?.send ?? '*WAI']) expect(say(line)).toBeNull();

    for (const measure of measureFunctions) {
      const offered = talk.functions[measure];
      if (!offered) throw new Error(`${measure} is not offered`);
      for (const line of offered.select) expect(say(line)).toBeNull();
      for (const fullScale of offered.range?.fullScales ?? []) {
        say(offered.range?.command.replace('{range}', String(fullScale)) ?? '');
      }
      const answer = offered.read.map(say).at(-1);
      const reading = compileDriver(driver).decode(0, answer ?? '', { function: measure });
      expect(reading).toHaveProperty('value', values[measure]);
    }
    expect(say(talk.errorQueue ?? '')).toBe('+0,"No error"');
  });
});

describe('scpiResponder', () => {
  it('should refuse a driver that does not speak SCPI', () => {
    expect(() => scpiResponder(shippedDriver('key-request'))).toThrow(TypeError);
  });
});

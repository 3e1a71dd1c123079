// When a meter measures and when it speaks, by its kind: by itself after every conversion, on a key character,
// or as an SCPI instrument that measures on request. Knows time, not the board; refuses nothing it receives.
import { benchIdentity } from '../core/meter/bench-identity.js';
import type { Driver } from '../core/meter/driver-format.js';
import { encodeReading } from '../core/meter/encode-reading.js';
import { type ScpiWorld, scpiResponder } from '../core/meter/scpi-responder.js';
import type { MeasureFunction } from '../core/reading.js';
import type { Shown } from './meter.js';

export interface SpeechSetup {
  readonly driver: Driver;
  readonly readingsPerS: number;
  /** What the dial is set to; instruments are told by command instead. */
  dial(): MeasureFunction;
  /** A fixed range set at the meter, or null. */
  readonly range: number | null;
  /** One conversion from the world's present time to `toS`. */
  convert(toS: number, measure: MeasureFunction, range: number | null): Shown;
  /** Time passes without measuring. */
  pass(toS: number): void;
}

export interface Speech {
  nextS(): number;
  /** Does what is due at `nextS`; returns the line said, or null. */
  step(): string | null;
  receive(text: string, worldS: number): void;
  reconnect(): void;
  /** An instrument's function is switched at its panel; a meter with a dial goes by that. */
  switchTo(measure: MeasureFunction): void;
}

/** Seconds an instrument needs to understand a command. */
const thinkS = 0.002;

export const createSpeech = (setup: SpeechSetup): Speech => {
  switch (setup.driver.talk.style) {
    case 'stream':
      return speakByItself(setup);
    case 'key':
      return speakOnKey(setup, setup.driver.talk.key);
    case 'scpi':
      return speakScpi(setup);
  }
};

const speakByItself = (setup: SpeechSetup): Speech => {
  const { driver, readingsPerS, range } = setup;
  let done = 0;
  const nextS = () => (done + 1) / readingsPerS;
  return {
    nextS,
    step: () => {
      const { reading, display } = setup.convert(nextS(), setup.dial(), range);
      done += 1;
      return encodeReading(driver, reading, display);
    },
    receive: () => undefined,
    reconnect: () => undefined,
    switchTo: () => undefined,
  };
};

/** Measures all the time, and says its latest reading when asked. */
const speakOnKey = (setup: SpeechSetup, key: string): Speech => {
  const { driver, readingsPerS, range } = setup;
  let done = 0;
  let latest: Shown | null = null;
  const asked: number[] = [];
  const conversionS = () => (done + 1) / readingsPerS;
  const answerS = () =>
    latest === null ? Number.POSITIVE_INFINITY : (asked[0] ?? Number.POSITIVE_INFINITY);
  return {
    nextS: () => Math.min(conversionS(), answerS()),
    step: () => {
      if (latest !== null && answerS() <= conversionS()) {
        setup.pass(asked.shift() ?? 0);
        return encodeReading(driver, latest.reading, latest.display);
      }
      latest = setup.convert(conversionS(), setup.dial(), range);
      done += 1;
      return null;
    },
    receive: (text, worldS) => {
      for (const letter of text) if (letter === key) asked.push(worldS + thinkS);
    },
    reconnect: () => {
      asked.length = 0;
    },
    switchTo: () => undefined,
  };
};

const speakScpi = (setup: SpeechSetup): Speech => {
  const { driver, readingsPerS } = setup;
  const responder = scpiResponder(driver);
  let state = responder.start;
  let half = '';
  let busyUntilS = 0;
  const queue: { readonly line: string; readonly atS: number }[] = [];

  /** What a line would measure, found by answering it once without keeping the outcome. */
  const measuredBy = (line: string): { measure: MeasureFunction; range: number | null } | null => {
    let found: { measure: MeasureFunction; range: number | null } | null = null;
    const sense: ScpiWorld['sense'] = (measure, range) => {
      found ??= { measure, range };
      const display = { fullScale: 1, resolution: 1 };
      return { reading: { t: 0, function: measure, overload: true }, display };
    };
    responder.answer(state, line, { identity: benchIdentity, sense });
    return found;
  };

  const startS = (atS: number) => Math.max(atS, busyUntilS);
  const lengthS = (line: string) => (measuredBy(line) === null ? thinkS : 1 / readingsPerS);

  return {
    nextS: () => {
      const head = queue[0];
      return head === undefined ? Number.POSITIVE_INFINITY : startS(head.atS) + lengthS(head.line);
    },
    step: () => {
      const head = queue.shift();
      if (head === undefined) return null;
      const beginS = startS(head.atS);
      const measured = measuredBy(head.line);
      busyUntilS = beginS + lengthS(head.line);
      setup.pass(beginS);
      const shown =
        measured === null
          ? null
          : setup.convert(busyUntilS, measured.measure, measured.range ?? setup.range);
      setup.pass(busyUntilS);
      const sense: ScpiWorld['sense'] = () => {
        if (shown === null) throw new Error('an SCPI line measured that had not before');
        return shown;
      };
      const answered = responder.answer(state, head.line, { identity: benchIdentity, sense });
      state = answered.state;
      return answered.answer;
    },
    receive: (text, worldS) => {
      const lines = (half + text).split(/[\r\n]+/u);
      half = lines.pop() ?? '';
      for (const line of lines) if (line !== '') queue.push({ line, atS: worldS });
    },
    switchTo: (measure) => {
      state = responder.switched(state, measure);
    },
    reconnect: () => {
      half = '';
      queue.length = 0;
    },
  };
};

// Stands at the far end of a wire and talks as the meter of a shipped driver does: its recording where lines
// are sent, its vocabulary where commands are understood.
import { onTestFinished } from 'vitest';
import { rangesOf } from '../../src/core/meter/accuracy.js';
import type { Driver } from '../../src/core/meter/driver-format.js';
import { scpiResponder } from '../../src/core/meter/scpi-responder.js';
import { bytesOf } from '../../src/core/meter/wire-text.js';
import type { Clock } from '../../src/session/ports.js';
import { recordingLines } from '../support/driver-files.js';

export interface Wire {
  write(bytes: Uint8Array): void;
  hear(call: (text: string) => void): void;
}

/** Of one function: nobody turns the dial. */
const recordedFrames = (driver: Driver): string[] =>
  recordingLines(driver.id).flatMap((line) => {
    const { frame, expect } = line as {
      frame: string;
      expect: { value?: number; function?: string };
    };
    return expect.function === 'resistance' && expect.value !== undefined ? [frame] : [];
  });

const linesPerS = 3;

export const pretendMeter = (driver: Driver, wire: Wire, clock: Clock): void => {
  const send = (line: string): void => wire.write(bytesOf(`${line}\r\n`, driver.wire.encoding));
  const { talk } = driver;
  if (talk.style === 'scpi') {
    obey(driver, wire, send);
    return;
  }
  const frames = recordedFrames(driver);
  if (frames.length === 0) throw new Error(`recording of ${driver.id} holds no values`);
  let next = 0;
  const say = (): void => {
    send(frames[next % frames.length] ?? '');
    next += 1;
  };
  if (talk.style === 'stream') {
    let over = false;
    onTestFinished(() => {
      over = true;
    });
    const sayOn = (): void => {
      if (over) return;
      say();
      clock.after(1 / linesPerS, sayOn);
    };
    clock.after(1 / linesPerS, sayOn);
    return;
  }
  wire.hear((text) => {
    for (const char of text) if (char === talk.key) say();
  });
};

const obey = (driver: Driver, wire: Wire, send: (line: string) => void): void => {
  const responder = scpiResponder(driver);
  let state = responder.start;
  let pending = '';
  wire.hear((text) => {
    const lines = (pending + text).split(/\r\n|\r|\n/u);
    pending = lines.pop() ?? '';
    for (const line of lines.filter((line) => line.trim() !== '')) {
      const answered = responder.answer(state, line, {
        identity: 'PRETEND,METER,0,1.0',
        sense: (measure) => {
          const [row] = rangesOf(driver, measure);
          if (!row) throw new Error(`${driver.id} has no range for ${measure}`);
          const { fullScale, resolution } = row;
          return {
            reading: { t: 0, function: measure, value: resolution * 100 },
            display: { fullScale, resolution },
          };
        },
      });
      state = answered.state;
      if (answered.answer !== null) send(answered.answer);
    }
  });
};

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DialogueError,
  startDialogue,
  stepDialogue,
} from '../../../../src/core/meter/dialogue/dialogue.js';
import { chooseRange } from '../../../../src/core/meter/dialogue/script.js';
import type { Driver, ScpiTalk } from '../../../../src/core/meter/driver-format.js';
import { type Meter, play } from './dialogue-bench.js';
import { keyDriver, scpiDriver } from './dialogue-drivers.js';

const resistance = { function: 'resistance' } as const;
const idn = 'ACME,DMM-1,0,1.02-01-03';
const soon = 0.02;

/** A meter that counts its readings, so that each answer can be told from every other. */
const goodMeter = (): Meter => {
  let readings = 0;
  return (sent) => {
    if (sent === '*IDN?') return [{ after: soon, line: idn }];
    if (sent === 'SYST:ERR?') return [{ after: soon, line: '+0,"No error"' }];
    if (!sent.endsWith('READ?') && sent !== 'D') return [];
    readings += 1;
    return [{ after: soon, line: sent === 'D' ? `${readings}.0O` : `+${readings}.0E+00` }];
  };
};

/** Answers come in the order of the questions, as from any real meter. */
const inOrder = (meter: Meter): Meter => {
  let lastAt = 0;
  return (sent, t) =>
    meter(sent, t).map((answer) => {
      lastAt = Math.max(lastAt + 0.001, t + answer.after);
      return { ...answer, after: lastAt - t };
    });
};

const texts = (sent: readonly { text: string }[]): string[] => sent.map(({ text }) => text);

describe('set-up of a SCPI meter', () => {
  it('should send init, identity, function and range, look into the error queue, then read', () => {
    const bench = play(scpiDriver(), { ...resistance, range: 1000 }, goodMeter(), 1.2);
    bench.at(0, 'opened');

    const { sent, says, readings } = bench.run();

    expect(texts(sent).slice(0, 6)).toEqual([
      '*CLS\n',
      '*IDN?\n',
      'CONF:RES\n',
      'RES:RANG 6000\n',
      'SYST:ERR?\n',
      'READ?\n',
    ]);
    expect(says).toEqual([{ t: expect.any(Number), says: 'identity', text: idn }]);
    expect(readings).toEqual([1, 2]);
  });

  it('should leave the range alone when none is wanted', () => {
    const bench = play(scpiDriver(), resistance, goodMeter(), 1);
    bench.at(0, 'opened');
    expect(texts(bench.run().sent).join('')).not.toContain('RANG');
  });

  it('should send initiate and fetch apart and take the answer of the last one', () => {
    const functions = { resistance: { select: [], read: ['INIT', '*OPC?', 'FETC?'] } };
    const meter: Meter = (sent) => {
      if (sent === '*OPC?') return [{ after: 0.1, line: '1' }];
      if (sent === 'FETC?') return [{ after: 0.1, line: '3.896E+02' }];
      return goodMeter()(sent, 0);
    };
    const bench = play(scpiDriver({ functions }), resistance, meter, 1);
    bench.at(0, 'opened');

    const { sent, readings } = bench.run();

    expect(texts(sent).slice(3, 6)).toEqual(['INIT\n', '*OPC?\n', 'FETC?\n']);
    expect(readings[0]).toBe(389.6);
  });

  it('should tell every error in the queue in words and go on', () => {
    const queue = ['-113,"Undefined header"', '-222,"Data out of range"', '0,"No error"'];
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      sent === 'SYST:ERR?'
        ? [{ after: soon, line: queue.shift() ?? '0,"No error"' }]
        : good(sent, t);
    const bench = play(scpiDriver(), resistance, meter, 1);
    bench.at(0, 'opened');

    const { says, readings } = bench.run();

    expect(says.filter(({ says }) => says === 'error').map(({ text }) => text)).toEqual([
      'the meter reports -113 "Undefined header" (it does not know a command)',
      'the meter reports -222 "Data out of range" (it could not do what it was told)',
    ]);
    expect(readings.length).toBeGreaterThan(0);
  });

  it('should not read an error queue for ever that never runs dry', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      sent === 'SYST:ERR?' ? [{ after: 0.001, line: '-350,"Queue overflow"' }] : good(sent, t);
    const bench = play(scpiDriver(), resistance, meter, 2);
    bench.at(0, 'opened');

    const { says, readings } = bench.run();

    expect(says.filter(({ says }) => says === 'error')).toHaveLength(1);
    expect(readings.length).toBeGreaterThan(0);
  });

  it('should go on without identity or error queue when the meter answers neither', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) => (sent === 'READ?' ? good(sent, t) : []);
    const bench = play(scpiDriver(), resistance, meter, 8);
    bench.at(0, 'opened');
    expect(bench.run().readings.slice(0, 2)).toEqual([1, 2]);
  });

  it('should set the meter up again after a reopening', () => {
    const bench = play(scpiDriver(), resistance, goodMeter(), 4);
    bench.at(0, 'opened');
    bench.at(2, 'lost');
    bench.at(3, 'opened');

    const { sent } = bench.run();

    expect(sent.filter(({ text }) => text === '*CLS\n').map(({ t }) => t > 2)).toEqual([
      false,
      true,
    ]);
    expect(sent.filter(({ t }) => t > 2 && t < 3)).toEqual([]);
  });

  it('should ignore a meter that repeats what it was sent', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) => [{ after: 0.001, line: sent }, ...good(sent, t)];
    const bench = play(scpiDriver(), resistance, meter, 1.2);
    bench.at(0, 'opened');
    const { readings, says } = bench.run();
    expect(readings).toEqual([1, 2]);
    expect(says.map(({ says }) => says)).toEqual(['identity']);
  });

  it('should refuse a function the driver does not have', () => {
    expect(() => startDialogue(scpiDriver(), { function: 'dc-volts' })).toThrow(DialogueError);
    expect(() => startDialogue(scpiDriver(), { function: 'diode' })).toThrow(
      'driver test-scpi has no diode; it has resistance',
    );
  });
});

describe('chooseRange', () => {
  it.each([
    [600, 600],
    [601, 6000],
    [1, 600],
    [1e9, 60000],
  ])('should hold %d ohm in the %d ohm range', (wanted, chosen) => {
    expect(chooseRange([600, 6000, 60000], wanted)).toBe(chosen);
    expect(chooseRange([60000, 600, 6000], wanted)).toBe(chosen);
  });
});

describe('a meter that does not answer', () => {
  it.each([
    ['SCPI', scpiDriver()],
    ['key', keyDriver()],
  ])('should say so once (%s) and go on trying', (_, driver) => {
    const bench = play(driver, resistance, () => [], 60);
    bench.at(0, 'opened');

    const { says, sent } = bench.run();

    expect(says.map(({ says }) => says)).toEqual(['no-answer']);
    expect(says[0]?.text).toMatch(/^no answer to "(SYST:ERR\?|D)" within 1 s/u);
    expect(says[0]?.t).toBeLessThan(4);
    expect(sent.filter(({ t }) => t > 50).length).toBeGreaterThan(1);
    expect(sent.length).toBeLessThan(300);
  });

  it('should read again, set up anew, once it is switched on', () => {
    const good = goodMeter();
    const bench = play(scpiDriver(), resistance, (sent, t) => (t < 20 ? [] : good(sent, t)), 30);
    bench.at(0, 'opened');

    const { readings, sent, says, sentBefore } = bench.run();

    const beforeFirst = sent.slice(0, sentBefore[0]).filter(({ t }) => t >= 20);
    expect(texts(beforeFirst)).toContain('CONF:RES\n');
    expect(readings.length).toBeGreaterThan(5);
    expect(says.map(({ says }) => says)).toEqual(['no-answer', 'identity']);
  });

  it('should say again that it is silent after it had answered in between', () => {
    const good = goodMeter();
    const on = (t: number): boolean => t < 5 || (t > 20 && t < 25);
    const bench = play(scpiDriver(), resistance, (sent, t) => (on(t) ? good(sent, t) : []), 40);
    bench.at(0, 'opened');
    expect(bench.run().says.filter(({ says }) => says === 'no-answer')).toHaveLength(2);
  });

  it('should tell a meter that answers but never reads from a mute one, with its error', () => {
    const good = goodMeter();
    const queue: string[] = [];
    const meter: Meter = (sent, t) => {
      if (sent === 'READ?') queue.push('-214,"Trigger deadlock"');
      if (sent === 'READ?') return [];
      if (sent === 'SYST:ERR?' && queue.length > 0)
        return [{ after: soon, line: queue.shift() ?? '' }];
      return good(sent, t);
    };
    const bench = play(scpiDriver(), resistance, meter, 30);
    bench.at(0, 'opened');

    const { says } = bench.run();

    expect(says.map(({ says }) => says)).toEqual(['identity', 'error', 'no-answer']);
    expect(says[1]?.text).toContain('-214 "Trigger deadlock"');
    expect(says[2]?.text).toContain('the meter answers, but gives no reading for "READ?"');
  });
});

const withoutMarker = (changes: Partial<ScpiTalk> = {}): Driver => {
  const driver = scpiDriver(changes);
  const { identify, errorQueue, ...talk } = driver.talk as ScpiTalk;
  return { ...driver, talk };
};

describe('late answers', () => {
  /**
   * Every reading carries the number of the question it answers; `delays` says how late each is. Answers come
   * in the order of the questions, as from any real meter.
   */
  const lateMeter = (delays: readonly number[], question: string): Meter => {
    let asked = 0;
    let lastAnswerAt = 0;
    const good = goodMeter();
    const inOrder = (t: number, after: number, line: string) => {
      lastAnswerAt = Math.max(lastAnswerAt + 0.001, t + after);
      return [{ after: lastAnswerAt - t, line }];
    };
    return (sent, t) => {
      if (sent !== question) return good(sent, t).flatMap(({ line }) => inOrder(t, soon, line));
      const after = delays[asked] ?? soon;
      asked += 1;
      return inOrder(t, after, question === 'D' ? `${asked}.0O` : `${asked}.0E+00`);
    };
  };

  it.each([
    ['SCPI', scpiDriver(), 'READ?', 3.7],
    ['SCPI without a marker question', withoutMarker(), 'READ?', 1.9],
    ['key', keyDriver(), 'D', 1.9],
  ])(
    'should never be taken for the answer to the next question (%s)',
    (_, driver, question, latest) => {
      // The driver's time-out is 1 s; without a marker question twice that is the promise.
      const late = fc.constantFrom(
        0.02,
        0.5,
        1.01,
        1.2,
        1.55,
        1.9,
        ...(latest > 2 ? [2.4, 3.7] : []),
      );
      fc.assert(
        fc.property(fc.array(late, { minLength: 1, maxLength: 12 }), (delays) => {
          const bench = play(driver, resistance, lateMeter(delays, question), 90);
          bench.at(0, 'opened');

          const { sent, readings, sentBefore } = bench.run();

          const questionsBefore = sentBefore.map(
            (count) => sent.slice(0, count).filter(({ text }) => text.trim() === question).length,
          );
          expect(readings).toEqual(questionsBefore);
          expect(readings.length).toBeGreaterThan(20);
        }),
        { seed: 20260131, numRuns: 60 },
      );
    },
  );

  it('should drop the late reading and read on', () => {
    const meter = lateMeter([soon, 1.3], 'READ?');
    const bench = play(scpiDriver(), resistance, meter, 5);
    bench.at(0, 'opened');
    const { readings } = bench.run();
    expect(readings.slice(0, 3)).toEqual([1, 3, 4]);
  });

  it('should name a meter that is always slower than the time-out', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      good(sent, t).map(({ line }) => ({ line, after: sent === 'READ?' ? 1.005 : soon }));
    const bench = play(scpiDriver(), resistance, meter, 20);
    bench.at(0, 'opened');
    const { says, readings } = bench.run();
    expect(readings).toEqual([]);
    expect(says.at(-1)?.text).toContain("come later than the driver's time-out of 1 s");
  });
});

describe('frames too many', () => {
  const twice: Meter = (() => {
    const good = goodMeter();
    return (sent, t) =>
      good(sent, t).flatMap((answer) => [answer, { ...answer, together: sent === 'READ?' }]);
  })();

  it('should never be taken for the answer to the question they led to', () => {
    const bench = play(scpiDriver(), resistance, twice, 10);
    bench.at(0, 'opened');
    const { readings, sent, sentBefore } = bench.run();
    const asked = sentBefore.map(
      (count) => sent.slice(0, count).filter(({ text }) => text.trim() === 'READ?').length,
    );
    expect(readings).toEqual(asked);
    expect(readings.length).toBeGreaterThan(10);
  });

  it('should put no later reading out of step, whatever they are', () => {
    const good = goodMeter();
    const babbling: Meter = (sent, t) =>
      good(sent, t).flatMap((answer) =>
        sent === 'READ?' && t < 3
          ? [
              { after: soon, line: '?;x9' },
              { ...answer, after: 2 * soon },
            ]
          : [answer],
      );
    const bench = play(scpiDriver(), resistance, babbling, 10);
    bench.at(0, 'opened');
    const { readings, sent, sentBefore } = bench.run();
    const asked = sentBefore.map(
      (count) => sent.slice(0, count).filter(({ text }) => text.trim() === 'READ?').length,
    );
    const numbers = readings.flatMap((reading, at) =>
      typeof reading === 'number' ? [[reading, asked[at]]] : [],
    );
    expect(numbers.length).toBeGreaterThan(10);
    for (const [reading, number] of numbers) expect(reading).toBe(number);
  });
});

/** How many readings had been asked for when each was heard. */
const askedBefore = (
  { sent, sentBefore }: { sent: readonly { text: string }[]; sentBefore: readonly number[] },
  question: string,
): number[] =>
  sentBefore.map(
    (count) => sent.slice(0, count).filter(({ text }) => text.trim() === question).length,
  );

describe('a wire on which everything takes long', () => {
  it.each([0.9, 1.4, 2.9, 3.05, 3.3, 3.7, 4.2, 5.1, 5.6])(
    'should never make a reading of a late answer, of whichever question (%d s)',
    (delayS) => {
      const good = goodMeter();
      const slow = (t: number): boolean => t > 3 && t < 60;
      const meter: Meter = (sent, t) =>
        good(sent, t).map(({ line }) => ({ line, after: slow(t) ? delayS : soon }));
      const driver = scpiDriver({ timeoutS: 3, pollS: 0.1 });
      const bench = play(driver, resistance, inOrder(meter), 80);
      bench.at(0, 'opened');

      const played = bench.run();

      expect(played.readings).toEqual(askedBefore(played, 'READ?'));
      expect(played.readings.length).toBeGreaterThan(30);
    },
  );
});

describe('an answer that never comes', () => {
  it.each([
    ['SCPI', scpiDriver({ timeoutS: 5 }), 'READ?', 1.6],
    ['key', keyDriver({ timeoutS: 0.9 }), 'D', 2],
    ['SCPI without a marker question', withoutMarker({ timeoutS: 0.9 }), 'READ?', 2],
  ])(
    'should hold the readings up for no more than two seconds (%s)',
    (_, driver, question, mostS) => {
      const good = goodMeter();
      let lostAt = 0;
      const meter: Meter = (sent, t) => {
        if (lostAt > 0 || t < 4 || sent !== question) return good(sent, t);
        lostAt = t;
        good(sent, t);
        return [];
      };
      const bench = play(driver, resistance, meter, 30);
      bench.at(0, 'opened');

      const { heardAt, readings } = bench.run();

      expect((heardAt.find((t) => t > lostAt) ?? 99) - lostAt).toBeLessThan(mostS);
      expect(readings.length).toBeGreaterThan(40);
    },
  );

  it('should not be given up too early: a slow reading is taken, and then waited for', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      good(sent, t).map(({ line }) => ({
        line,
        after: sent === 'READ?' && t > 4 && t < 15 ? 2.5 : soon,
      }));
    const bench = play(scpiDriver({ timeoutS: 5 }), resistance, inOrder(meter), 30);
    bench.at(0, 'opened');

    const played = bench.run();

    expect(played.readings).toEqual(askedBefore(played, 'READ?'));
    const between = played.sent.filter(({ t, text }) => t > 7.5 && t < 15 && text !== 'READ?\n');
    expect(between).toEqual([]);
  });

  it('should be waited for where another question makes the meter drop it', () => {
    const good = goodMeter();
    let latest = '';
    const meter: Meter = (sent, t) => {
      const own = `${sent} ${t}`;
      latest = own;
      return good(sent, t).map(({ line }) =>
        sent === 'READ?'
          ? { line, after: 2.5, still: () => latest === own }
          : { line, after: soon },
      );
    };
    const bench = play(scpiDriver({ timeoutS: 5 }), resistance, meter, 60);
    bench.at(0, 'opened');
    expect(bench.run().readings.length).toBeGreaterThan(15);
  });
});

describe('answers in another order', () => {
  it('should never be taken for the answer to a later question', () => {
    const good = goodMeter();
    let held: string | undefined;
    const meter: Meter = (sent, t) =>
      good(sent, t).flatMap(({ line }) => {
        const measuringS = sent === 'READ?' ? 0.05 : soon;
        if (t < 6 || t > 16) return [{ line, after: measuringS }];
        const before = held;
        held = before === undefined ? line : undefined;
        return before === undefined
          ? []
          : [
              { line, after: 0.001 },
              { line: before, after: 0.002 },
            ];
      });
    const bench = play(scpiDriver({ timeoutS: 5, pollS: 0 }), resistance, meter, 25);
    bench.at(0, 'opened');

    const played = bench.run();

    expect(played.readings).toEqual(askedBefore(played, 'READ?'));
    expect(played.heardAt.filter((t) => t > 21).length).toBeGreaterThan(20);
  });

  it.each([24, 24.37, 27.11])(
    'should be over within two seconds of their end, though late ones came before (%d s)',
    (from) => {
      const good = goodMeter();
      const until = from + 2;
      let held: string | undefined;
      let lastAt = 0;
      const meter: Meter = (sent, t) =>
        good(sent, t).flatMap(({ line }) => {
          const before = held;
          held = undefined;
          if (t >= from && t < until) {
            if (before !== undefined)
              return [line, before].map((text) => ({ line: text, after: 0 }));
            held = line;
            return [];
          }
          lastAt = Math.max(lastAt, t + (t >= 10 && t < 18 ? 5.6 : 0.05));
          return [{ line, after: lastAt - t }];
        });
      const bench = play(scpiDriver({ timeoutS: 5, pollS: 0 }), resistance, meter, 45);
      bench.at(0, 'opened');

      const played = bench.run();

      expect(played.readings).toEqual(askedBefore(played, 'READ?'));
      expect(played.heardAt.some((t) => t > from - 1 && t < from)).toBe(true);
      expect((played.heardAt.find((t) => t >= until) ?? 99) - until).toBeLessThan(2);
    },
  );
});

describe('an answer given twice', () => {
  it.each([
    ['SCPI', scpiDriver({ pollS: 0 }), 'READ?'],
    ['key', keyDriver({ pollS: 0 }), 'D'],
  ])(
    'should be taken once, though the second comes as a piece of its own (%s)',
    (_, driver, question) => {
      const good = goodMeter();
      const measuringS = 0.1;
      const meter: Meter = (sent, t) =>
        good(sent, t).flatMap(({ line }) => {
          const answer = { line, after: sent === question ? measuringS : soon };
          const again = { line, after: answer.after + 0.004 };
          return sent === question && t > 6 ? [answer, again] : [answer];
        });
      const bench = play(driver, resistance, inOrder(meter), 15);
      bench.at(0, 'opened');

      const played = bench.run();

      expect(played.readings).toEqual(askedBefore(played, question));
      expect(played.readings.length).toBeGreaterThan(80);
    },
  );

  it('should not be seen in a meter that is set to a faster rate', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      good(sent, t).map(({ line }) => ({ line, after: sent !== 'READ?' || t > 6 ? soon : 0.2 }));
    const bench = play(scpiDriver({ pollS: 0 }), resistance, meter, 12);
    bench.at(0, 'opened');
    const { readings } = bench.run();
    expect(readings.length).toBeGreaterThan(6 / 0.2 + 4 / soon);
  });
});

describe('a meter with a long time-out that was stuck', () => {
  it('should be read again within two seconds once it answers', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) => (t > 4 && t < 13.2 ? [] : good(sent, t));
    const bench = play(scpiDriver({ timeoutS: 5 }), resistance, meter, 30);
    bench.at(0, 'opened');
    const { sent } = bench.run();
    const back = sent.filter(({ t, text }) => t >= 13.2 && text.trim() === 'READ?');
    expect((back[0]?.t ?? 99) - 13.2).toBeLessThan(2);
  });
});

describe('a function query', () => {
  const functionQuery = {
    send: 'FUNC?',
    everyS: 2,
    answers: { RES: 'resistance', 'VOLT:DC': 'dc-volts' },
  } as const;
  const opened = (meter: Meter, untilS: number, changes: Partial<ScpiTalk> = {}) => {
    const driver = scpiDriver({ functionQuery, ...changes });
    const world = play(driver, resistance, meter, untilS);
    world.at(0, 'opened');
    return world.run();
  };
  const asks = (sent: readonly { text: string }[]): number =>
    texts(sent).filter((text) => text.startsWith('FUNC?')).length;

  it('should be asked before the first reading and then as often as the driver says', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      sent === 'FUNC?' ? [{ after: soon, line: '"RES"' }] : good(sent, t);
    const { sent, readings } = opened(meter, 9);
    expect(readings.length).toBeGreaterThan(14);
    expect(asks(sent)).toBeGreaterThanOrEqual(4);
    expect(asks(sent)).toBeLessThanOrEqual(6);
  });

  it('should be asked again after a reading that jumped', () => {
    let readings = 0;
    const meter: Meter = (sent) => {
      if (sent === '*IDN?') return [{ after: soon, line: idn }];
      if (sent === 'SYST:ERR?') return [{ after: soon, line: '+0,"No error"' }];
      if (sent === 'FUNC?') return [{ after: soon, line: readings < 8 ? '"RES"' : '"CURR:DC"' }];
      if (sent !== 'READ?') return [];
      readings += 1;
      return [{ after: soon, line: readings < 8 ? '+3.880E+02' : '+4.0E-04' }];
    };
    const slowly = { ...functionQuery, everyS: 60 };
    const { readings: heard } = opened(meter, 9, { functionQuery: slowly });
    expect(heard.slice(0, 8)).toEqual([388, 388, 388, 388, 388, 388, 388, 0.0004]);
    expect(heard[8]).toContain('the meter measures something else');
  });

  it('should be given up where it is never answered, and the readings go on', () => {
    const { sent, readings } = opened(goodMeter(), 40);
    expect(asks(sent)).toBe(2);
    expect(readings.length).toBeGreaterThan(50);
  });
});

describe('keeping a meter awake', () => {
  it('should send between readings, and not take the answer for a reading', () => {
    const keepAwake = { send: 'SYST:UPT?', everyS: 2 };
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      sent === 'SYST:UPT?' ? [{ after: soon, line: '7777' }] : good(sent, t);
    const bench = play(scpiDriver({ keepAwake }), resistance, meter, 10.4);
    bench.at(0, 'opened');

    const { sent, readings } = bench.run();

    expect(sent.filter(({ text }) => text === 'SYST:UPT?\n')).toHaveLength(6);
    expect(readings).not.toContain(7777);
    expect(readings.length).toBeGreaterThan(15);
  });

  it('should go on reading when the keep-awake question is never answered', () => {
    const keepAwake = { send: 'SYST:UPT?', everyS: 5 };
    const bench = play(scpiDriver({ keepAwake }), resistance, goodMeter(), 30);
    bench.at(0, 'opened');
    expect(bench.run().readings.length).toBeGreaterThan(25);
  });
});

describe('what a frame of the wrong form does', () => {
  it('should be a fault with its text when a reading cannot be read', () => {
    const good = goodMeter();
    const meter: Meter = (sent, t) =>
      sent === 'READ?' ? [{ after: soon, line: '1.2E' }] : good(sent, t);
    const bench = play(scpiDriver(), resistance, meter, 8);
    bench.at(0, 'opened');

    const { readings, says } = bench.run();

    expect(readings[0]).toContain('1.2E');
    expect(says.at(-1)).toMatchObject({
      says: 'error',
      text: expect.stringContaining('the last 10'),
    });
  });

  it('should be a fault when a line is too long', () => {
    let state = startDialogue(keyDriver(), resistance);
    const heard = (event: Parameters<typeof stepDialogue>[1]) => {
      const stepped = stepDialogue(state, event);
      state = stepped.state;
      return stepped.effects;
    };
    heard({ event: 'opened', t: 0 });
    heard({ event: 'wake', t: 0.2 });
    const effects = heard({ event: 'frame', t: 0.3, frame: { overlong: true, text: 'UUUU' } });
    expect(effects[0]).toEqual({
      effect: 'reading',
      reading: { t: 0.3, fault: 'line too long: UUUU' },
    });
  });

  it('should ask for another wake when woken too early', () => {
    const opened = stepDialogue(startDialogue(keyDriver(), resistance), { event: 'opened', t: 5 });
    const woken = stepDialogue(opened.state, { event: 'wake', t: 5.1 });
    expect(woken.effects).toEqual([{ effect: 'wake', t: 5.15 }]);
  });
});

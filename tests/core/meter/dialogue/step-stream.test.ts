import { describe, expect, it } from 'vitest';
import { play } from './dialogue-bench.js';
import { streamDriver } from './dialogue-drivers.js';

const resistance = { function: 'resistance' } as const;
const mute = () => [];

describe('a meter that talks by itself', () => {
  it('should be heard without being asked', () => {
    const bench = play(streamDriver(), resistance, mute, 2);
    bench.at(0, 'opened');
    bench.line(0.5, '389.6O');
    bench.line(1, 'OLO');

    const { readings, sent, says } = bench.run();

    expect(readings).toEqual([389.6, 'OL']);
    expect(sent).toEqual([]);
    expect(says).toEqual([]);
  });

  it('should be called silent once, and again after it has spoken', () => {
    const bench = play(streamDriver({ silentAfterS: 2 }), resistance, mute, 30);
    bench.at(0, 'opened');
    bench.line(1, '1.0O');
    bench.line(10, '2.0O');

    const { says } = bench.run();

    expect(says.map(({ t, says }) => [t, says])).toEqual([
      [3, 'no-answer'],
      [12, 'no-answer'],
    ]);
    expect(says[0]?.text).toContain('nothing came from the meter for 2 s');
  });

  it('should not be called silent while the link is down', () => {
    const bench = play(streamDriver({ silentAfterS: 2 }), resistance, mute, 30);
    bench.at(0, 'opened');
    bench.at(1, 'lost');
    expect(bench.run().says).toEqual([]);
  });

  it('should be kept awake from the opening on, with the line end', () => {
    const keepAwake = { send: 'W', everyS: 5 };
    const bench = play(streamDriver({ keepAwake, silentAfterS: 60 }), resistance, mute, 12);
    bench.at(1, 'opened');
    expect(bench.run().sent).toEqual([
      { t: 1, text: 'W\n' },
      { t: 6, text: 'W\n' },
      { t: 11, text: 'W\n' },
    ]);
  });

  it('should be told of when line after line cannot be read', () => {
    const bench = play(streamDriver(), resistance, mute, 10);
    bench.at(0, 'opened');
    for (let i = 0; i < 25; i += 1) bench.line(0.1 * i + 0.1, '\u00ff\u0013x');

    const { readings, says } = bench.run();

    expect(readings).toHaveLength(25);
    expect(says.filter(({ says }) => says === 'error')).toHaveLength(1);
  });

  it('should be cut off when it floods, with one word, and heard again afterwards', () => {
    const bench = play(streamDriver(), resistance, mute, 4);
    bench.at(0, 'opened');
    for (let i = 0; i < 5000; i += 1) bench.line(0.5, '1.0O');
    bench.line(3, '2.0O');

    const { readings, says } = bench.run();

    expect(readings).toHaveLength(1001);
    expect(readings.at(-1)).toBe(2);
    expect(says.filter(({ says }) => says === 'error')).toHaveLength(1);
  });

  it('should take nothing of a flood that lasts, and hear the meter as soon as it has ended', () => {
    const bench = play(streamDriver(), resistance, mute, 10);
    bench.at(0, 'opened');
    for (let i = 0; i < 50_000; i += 1) bench.line(0.5 + i / 10_000, '1.0O');
    for (let i = 0; i < 20; i += 1) bench.line(5.5 + i / 10, '2.0O');

    const { readings, heardAt, says } = bench.run();

    expect(readings.filter((value) => value === 1)).toHaveLength(1000);
    expect(heardAt[1000]).toBeLessThan(5.8);
    expect(says.filter(({ says }) => says === 'error')).toHaveLength(1);
  });
});

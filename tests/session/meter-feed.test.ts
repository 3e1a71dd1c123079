// The meter feed with a link and a clock in the test's hands.
import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/core/inputs.js';
import type { Driver } from '../../src/core/meter/driver-format.js';
import { createMeterFeed } from '../../src/session/meter-feed.js';
import type { Link, LinkListener } from '../../src/session/ports.js';
import { keyDriver, scpiDriver, streamDriver } from '../core/meter/dialogue/dialogue-drivers.js';
import { handClock } from '../link/hand-clock.js';

const scene = (driver: Driver, answer: (sent: string) => string[] = () => []) => {
  const clock = handClock();
  const inputs: Input[] = [];
  const sent: string[] = [];
  let listener: LinkListener | undefined;
  let closed = false;
  const hears = (): LinkListener => {
    if (listener === undefined) throw new Error('the link was not opened');
    return listener;
  };
  const link: Link = {
    title: 'test link',
    open: (given) => {
      listener = given;
    },
    // Answers within `send`, as an in-process link may.
    send: (text) => {
      sent.push(text);
      for (const line of answer(text.trim())) listener?.frame(clock.now(), { text: line });
    },
    close: async () => {
      closed = true;
    },
  };
  const feed = createMeterFeed({ link, driver, wanted: { function: 'resistance' }, clock });
  feed.start((input) => inputs.push(input));
  return {
    clock,
    feed,
    inputs,
    sent,
    isClosed: () => closed,
    open: (again = false) => hears().opened(clock.now(), again),
    lose: (reason: string) => hears().lost(clock.now(), reason),
    fail: (reason: string) => hears().failed(clock.now(), reason),
    end: () => hears().ended(clock.now()),
    say: (text: string) => hears().frame(clock.now(), { text }),
  };
};

const good = (sent: string): string[] => {
  if (sent === '*IDN?') return ['ACME,DMM-1,0,1.0'];
  if (sent === 'SYST:ERR?') return ['0,"No error"'];
  return sent === 'READ?' ? ['3.896E+02'] : [];
};

const kinds = (inputs: readonly Input[]): string[] =>
  inputs.map((input) => {
    if (input.kind === 'link') return `link ${input.change}`;
    return input.kind === 'meter' ? `meter ${input.says}` : input.kind;
  });

describe('a meter feed', () => {
  it('should carry its meter and its link in its title', () => {
    expect(scene(streamDriver()).feed.title).toBe('Test meter on test link');
  });

  it('should stamp readings on arrival', () => {
    const { clock, inputs, open, say } = scene(streamDriver());
    open();
    clock.advance(1.25);
    say('389.6O');
    expect(inputs).toEqual([
      { kind: 'link', t: 0, change: 'opened', detail: 'test link' },
      {
        kind: 'reading',
        reading: expect.objectContaining({ t: 1.25, function: 'resistance', value: 389.6 }),
      },
    ]);
  });

  it('should set up, name the meter and poll, also when answers come within the sending', () => {
    const { clock, inputs, open, sent } = scene(scpiDriver({ pollS: 0.5 }), good);
    open();
    clock.advance(1.9);
    expect(kinds(inputs)).toEqual(['link opened', 'meter identity', ...Array(4).fill('reading')]);
    const times = inputs.flatMap((input) => (input.kind === 'reading' ? [input.reading.t] : []));
    times.forEach((t, i) => {
      expect(t).toBeCloseTo(0.15 + 0.5 * i, 9);
    });
    expect(sent.filter((text) => text === 'READ?\n')).toHaveLength(4);
  });

  it('should turn a loss and a return into inputs and set the meter up again', () => {
    const { clock, inputs, open, lose, sent } = scene(scpiDriver(), good);
    open();
    clock.advance(0.2);
    lose('unplugged');
    const sentBefore = sent.length;
    clock.advance(5);
    expect(sent).toHaveLength(sentBefore);
    open(true);
    clock.advance(0.2);
    expect(kinds(inputs)).toEqual([
      'link opened',
      'meter identity',
      'reading',
      'link lost',
      'link returned',
      'meter identity',
      'reading',
    ]);
    expect(inputs[3]).toMatchObject({ t: 0.2, detail: 'unplugged' });
    expect(sent.slice(sentBefore)).toContain('CONF:RES\n');
  });

  it('should call a stream that stops silent, once, and returned when it speaks', () => {
    const { clock, inputs, open, say } = scene(streamDriver({ silentAfterS: 2 }));
    open();
    clock.advance(1);
    say('1.0O');
    clock.advance(10);
    say('2.0O');
    expect(kinds(inputs)).toEqual([
      'link opened',
      'reading',
      'meter no-answer',
      'link silent',
      'link returned',
      'reading',
    ]);
    expect(inputs[3]).toMatchObject({ t: 3 });
    expect(inputs[4]).toMatchObject({ t: 11 });
  });

  it.each([
    ['SCPI', scpiDriver()],
    ['key', keyDriver()],
  ])('should call a meter silent that answers nothing (%s)', (_, driver) => {
    const { clock, inputs, open } = scene(driver);
    open();
    clock.advance(60);
    expect(kinds(inputs)).toEqual(['link opened', 'meter no-answer', 'link silent']);
  });

  it('should pass failure and end on and rest', () => {
    for (const [happen, change] of [
      ['fail', 'failed'],
      ['end', 'ended'],
    ] as const) {
      const made = scene(streamDriver());
      made.open();
      if (happen === 'fail') made.fail('never there');
      else made.end();
      made.clock.advance(60);
      expect(kinds(made.inputs)).toEqual(['link opened', `link ${change}`]);
      expect(made.clock.next()).toBeUndefined();
    }
  });

  it('should fall silent at once when stopped', async () => {
    const made = scene(scpiDriver(), good);
    made.open();
    made.clock.advance(0.2);
    const before = made.inputs.length;
    await made.feed.stop();
    made.say('3.896E+02');
    made.clock.advance(60);
    expect(made.inputs).toHaveLength(before);
    expect(made.isClosed()).toBe(true);
    expect(made.clock.next()).toBeUndefined();
  });
});

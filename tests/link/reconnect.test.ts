// Reconnecting, with dialling and time in the test's hands.
import { describe, expect, it } from 'vitest';
import type { ConnectionEvents, Dial } from '../../src/link/connection.js';
import { createReconnectingLink, type Patience } from '../../src/link/reconnect.js';
import { handClock } from './hand-clock.js';
import { recordLink } from './record-link.js';
import { linkDriver } from './test-driver.js';

const bytes = (text: string): Uint8Array => Buffer.from(text, 'latin1');

const scene = (patience: Patience = 'once', style: 'stream' | 'scpi' = 'stream') => {
  const clock = handClock();
  const dialled: { at: number; events: ConnectionEvents; sent: string[]; closed: boolean }[] = [];
  const dial: Dial = (events) => {
    const connection = { at: clock.now(), events, sent: [] as string[], closed: false };
    dialled.push(connection);
    return {
      send: (sent) => connection.sent.push(Buffer.from(sent).toString('latin1')),
      close: async () => {
        connection.closed = true;
      },
    };
  };
  const driver = linkDriver(style);
  const link = createReconnectingLink({ title: 'test', dial, driver, clock, patience });
  const recorded = recordLink(link);
  const latest = () => {
    const last = dialled.at(-1);
    if (last === undefined) throw new Error('nothing was dialled');
    return last;
  };
  return { clock, dialled, link, recorded, latest };
};

describe('a link that comes back', () => {
  it('should dial again after 0.25 s, doubling to 2 s, and say the reason once', () => {
    const { clock, dialled, recorded, latest } = scene('forever');
    for (let i = 0; i < 6; i += 1) {
      latest().events.gone({ reason: 'nobody there', absent: true });
      clock.advance((clock.next() ?? 0) - clock.now());
    }
    expect(dialled.map(({ at }) => at)).toEqual([0, 0.25, 0.75, 1.75, 3.75, 5.75, 7.75]);
    expect(recorded.told).toEqual(['lost: nobody there']);
  });

  it('should start from 0.25 s again once a byte has come', () => {
    const { clock, dialled, latest } = scene('forever');
    latest().events.gone({ reason: 'a', absent: false });
    clock.advance(0.25);
    latest().events.gone({ reason: 'a', absent: false });
    clock.advance(0.5);
    latest().events.opened();
    latest().events.bytes(bytes('x'));
    latest().events.gone({ reason: 'b', absent: false });
    clock.advance(0.25);
    expect(dialled.map(({ at }) => at)).toEqual([0, 0.25, 0.75, 1]);
  });

  it('should not hurry back to a peer that takes the call and hangs up', () => {
    const { clock, dialled, latest } = scene('forever');
    for (let i = 0; i < 5; i += 1) {
      latest().events.opened();
      latest().events.gone({ reason: 'hung up', absent: false });
      clock.advance((clock.next() ?? 0) - clock.now());
    }
    expect(dialled.map(({ at }) => at)).toEqual([0, 0.25, 0.75, 1.75, 3.75, 5.75]);
  });

  it('should give up at once when the device was never there', () => {
    const { clock, dialled, recorded, latest } = scene('once');
    latest().events.gone({ reason: 'no such port', absent: true });
    clock.advance(60);
    expect(recorded.told).toEqual(['failed: no such port']);
    expect(dialled).toHaveLength(1);
  });

  it('should never give up after it has been there once', () => {
    const { clock, dialled, recorded, latest } = scene('once');
    latest().events.opened();
    latest().events.gone({ reason: 'unplugged', absent: false });
    for (let i = 0; i < 20; i += 1) {
      clock.advance(2);
      latest().events.gone({ reason: 'no such port', absent: true });
    }
    expect(dialled).toHaveLength(21);
    clock.advance(2);
    latest().events.opened();
    expect(recorded.told).toEqual(['opened', 'lost: unplugged', 'opened again']);
  });

  it('should tell once more when something new stands in the way', () => {
    const { clock, recorded, latest } = scene('once');
    latest().events.opened();
    for (const [reason, absent] of [
      ['unplugged', false],
      ['no such port', true],
      ['in use', false],
      ['in use', false],
      ['no such port', true],
    ] as const) {
      latest().events.gone({ reason, absent });
      clock.advance(2);
    }
    expect(recorded.told).toEqual(['opened', 'lost: unplugged', 'lost: in use']);
  });

  it('should ignore what an old connection still says', () => {
    const { clock, recorded, latest } = scene('once');
    const old = latest().events;
    old.opened();
    old.gone({ reason: 'unplugged', absent: false });
    old.bytes(bytes('x\n1.0\n'));
    old.gone({ reason: 'again', absent: false });
    clock.advance(0.25);
    latest().events.opened();
    latest().events.bytes(bytes('x\n2.0\n'));
    expect(recorded.lines).toEqual(['2.0']);
    expect(recorded.told).toEqual(['opened', 'lost: unplugged', 'opened again']);
  });

  it('should send nothing while it is down', () => {
    const { clock, dialled, link, latest } = scene('once', 'scpi');
    latest().events.opened();
    link.send('1\n');
    latest().events.gone({ reason: 'unplugged', absent: false });
    link.send('2\n');
    clock.advance(0.25);
    latest().events.opened();
    link.send('3\n');
    expect(dialled.map(({ sent }) => sent)).toEqual([['1\n'], ['3\n']]);
  });

  it('should not dial after it was closed', async () => {
    const { clock, dialled, link, latest } = scene('forever');
    latest().events.gone({ reason: 'nobody there', absent: true });
    await link.close();
    clock.advance(60);
    expect(dialled).toHaveLength(1);
    expect(clock.next()).toBeUndefined();
  });

  it('should close the connection that is up and hear nothing more', async () => {
    const { link, recorded, latest } = scene();
    latest().events.opened();
    await link.close();
    latest().events.bytes(bytes('x\n1.0\n'));
    latest().events.gone({ reason: 'closed', absent: false });
    expect(latest().closed).toBe(true);
    expect(recorded).toMatchObject({ told: ['opened'], lines: [] });
  });

  it('should refuse to be opened twice', () => {
    const { link } = scene();
    expect(() => recordLink(link)).toThrow('opened twice');
  });
});

describe('where listening begins', () => {
  it('should drop the first line of a meter that talks by itself, whole or not', () => {
    const { recorded, latest } = scene('once', 'stream');
    latest().events.opened();
    latest().events.bytes(bytes('9.6\n389.6\n'));
    expect(recorded.lines).toEqual(['389.6']);
  });

  it('should go on in the middle of a line when something is sent to such a meter', () => {
    const { link, recorded, latest } = scene('once', 'stream');
    latest().events.opened();
    latest().events.bytes(bytes('x\n38'));
    link.send(' ');
    latest().events.bytes(bytes('9.6\n'));
    expect(recorded.lines).toEqual(['389.6']);
  });

  it('should take nothing that came before the first question for its answer', () => {
    const { link, recorded, latest } = scene('once', 'scpi');
    latest().events.opened();
    latest().events.bytes(bytes('E+02\n+1.2'));
    link.send('READ?\n');
    latest().events.bytes(bytes('3.896E+02\n'));
    expect(recorded.lines).toEqual(['3.896E+02']);
  });

  it('should count a definite-length block instead of looking for its end', () => {
    const { link, recorded, latest } = scene('once', 'scpi');
    latest().events.opened();
    link.send('CURV?\n');
    latest().events.bytes(bytes('#15he\nlo\n'));
    expect(recorded.lines).toEqual(['#15he\nlo']);
  });
});

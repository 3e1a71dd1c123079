// An instrument's function is switched at its panel in the middle of a walk. Its readings do not name the function: the
// driver's function query does.
import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { WalkEvent } from '../../src/core/events.js';
import type { Input } from '../../src/core/inputs.js';
import { scpiResponder } from '../../src/core/meter/scpi-responder.js';
import { beginWalk, decide } from '../../src/core/walk/decide.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import { createMeterFeed } from '../../src/session/meter-feed.js';
import { misnamed, openedWith, verdictsOf, walkOnBench } from '../bench/support/live-walk.js';
import { shippedProfile } from '../bench/support/profile-files.js';
import { until } from '../link/record-link.js';
import { shippedDriver } from '../support/driver-files.js';
import { ohms, storyProfile } from '../support/walk-story.js';

const holdsOf = (events: readonly WalkEvent[]): string[] =>
  events.flatMap((event) => (event.type === 'walk-held' ? [event.reason] : []));

describe('an instrument on the virtual bench, switched to volts in the middle of a walk', () => {
  it.each(['scpi-read', 'scpi-initiate-fetch'])('should be noticed and waited for: %s', (id) => {
    const walk = walkOnBench({
      driver: shippedDriver(id),
      profile: shippedProfile('demo'),
      bench: { scenario: 'healthy', seed: 3 },
      setup: {
        troubles: [
          { atS: 20, kind: 'dial', to: 'dc-volts' },
          { atS: 31.3, kind: 'dial', to: 'diode' },
        ],
      },
    });
    expect(holdsOf(walk.events)).toEqual(['wrong-function', 'wrong-function']);
    expect(walk.finished).toBe(true);
    expect(misnamed(walk)).toEqual([]);
    expect([...verdictsOf(walk.events).values()].every((verdict) => verdict === 'normal')).toBe(
      true,
    );
  });
});

describe('an instrument on a socket, switched to volts in the middle of a walk', () => {
  it('should be judged by no limit in ohm, and go on at the same pin when switched back', async () => {
    const driver = shippedDriver('scpi-read');
    const responder = scpiResponder(driver);
    let meter = responder.start;
    let touched: number | null = null;
    const server = createServer((socket) => {
      socket.on('error', () => undefined);
      socket.setEncoding('ascii');
      socket.on('data', (asked: string) => {
        for (const line of asked.split('\n').filter((text) => text !== '')) {
          const said = responder.answer(meter, line, {
            identity: 'TESTS,METER,0,1',
            sense: (measure) => ({
              display: { fullScale: 1000, resolution: 0.01 },
              reading:
                measure === 'dc-volts'
                  ? { t: 0, function: measure, value: 0.0004 }
                  : touched === null
                    ? { t: 0, function: measure, overload: true }
                    : { t: 0, function: measure, value: touched },
            }),
          });
          meter = said.state;
          const { answer } = said;
          if (answer !== null) setTimeout(() => socket.write(`${answer}\n`), 40);
        }
      });
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => void server.close());
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('no TCP address');

    const clock = createMonotonicClock();
    const name = { kind: 'tcp', host: '127.0.0.1', port: address.port } as const;
    const link = openLink(name, driver, { clock, patience: 'once' });
    onTestFinished(() => link.close());
    const measure = { function: 'resistance', polarity: 'red-walks' } as const;
    const profile = storyProfile(
      [
        ['GND', { kind: 'ground' }],
        ['RST', ohms(5120)],
        ['INT', ohms(742)],
      ],
      measure,
    );
    const events: WalkEvent[] = [];
    let { state } = beginWalk(openWalk({ ...openedWith(driver, profile), groundCheck: false }));
    const take = (input: Input): void => {
      const decision = decide(state, input);
      state = decision.state;
      events.push(...decision.events);
    };
    createMeterFeed({ link, driver, wanted: { function: 'resistance' }, clock }).start(take);

    const judged = (pin: string) => () => verdictsOf(events).has(pin);
    const seconds = (s: number) => new Promise((resolve) => setTimeout(resolve, s * 1000));
    await until('readings', () => state.reading !== null);
    touched = 0.2;
    await until('pin 1', judged('1'));
    touched = null;
    await seconds(0.6);

    meter = responder.switched(meter, 'dc-volts');
    await until('a hold', () => state.hold !== null);
    expect(state.hold).toMatchObject({ reason: 'wrong-function' });
    touched = 5120;
    await seconds(1.5);
    expect([...verdictsOf(events).keys()]).toEqual(['1']);

    touched = null;
    meter = responder.switched(meter, 'resistance');
    await until('freed', () => state.hold === null);
    touched = 5120;
    await until('pin 2', judged('2'));
    expect(Object.fromEntries(verdictsOf(events))).toEqual({ 1: 'normal', 2: 'normal' });
    expect(state.plan.pins[state.cursor]?.pin).toBe('3');
  }, 30_000);
});

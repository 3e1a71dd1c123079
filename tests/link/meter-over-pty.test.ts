// Meter, pseudo-terminal, link, dialogue and feed together: plug pulled and put back, in every way of talking.
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Input } from '../../src/core/inputs.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import { createMeterFeed } from '../../src/session/meter-feed.js';
import { shippedDriver } from '../support/driver-files.js';
import { plugIn } from '../support/pty.js';
import { pretendMeter } from './pretend-meter.js';
import { until } from './record-link.js';

describe('a meter on a pseudo-terminal', () => {
  it.each(['scpi-read', 'scpi-initiate-fetch', 'key-request', 'stream-value-unit'])(
    'should be read before and after the plug was pulled (%s)',
    async (id) => {
      const driver = shippedDriver(id);
      const clock = createMonotonicClock();
      const pty = await plugIn();
      pretendMeter(driver, pty, clock);
      const inputs: Input[] = [];
      const link = openLink({ kind: 'serial', path: pty.path, settings: {} }, driver, {
        clock,
        patience: 'once',
      });
      const feed = createMeterFeed({ link, driver, wanted: { function: 'resistance' }, clock });
      onTestFinished(() => feed.stop());
      const values = (): number =>
        inputs.filter((input) => input.kind === 'reading' && 'value' in input.reading).length;
      feed.start((input) => inputs.push(input));
      await until('two values', () => values() >= 2);

      await pty.unplug();
      await until('lost', () =>
        inputs.some((input) => input.kind === 'link' && input.change === 'lost'),
      );
      const before = values();
      const again = await plugIn(pty.path);
      pretendMeter(driver, again, clock);
      await until('two more values', () => values() >= before + 2);

      const changes = inputs.flatMap((input) => (input.kind === 'link' ? [input.change] : []));
      expect(changes).toEqual(['opened', 'lost', 'returned']);
      expect(
        inputs.filter((input) => input.kind === 'reading' && 'fault' in input.reading),
      ).toEqual([]);
      expect(inputs.filter((input) => input.kind === 'meter' && input.says !== 'identity')).toEqual(
        [],
      );
      if (driver.talk.style === 'scpi') expect(again.received()).toContain('*CLS');
    },
  );
});

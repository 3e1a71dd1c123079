// Opens a link to the port given, and one to a port that does not exist, closes both, and must then end by
// itself.
import { writeSync } from 'node:fs';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import { linkDriver } from './test-driver.js';

const clock = createMonotonicClock();
const driver = linkDriver('scpi');
const [path = ''] = process.argv.slice(2);
const silence = {
  frame: () => undefined,
  lost: () => undefined,
  failed: () => undefined,
  ended: () => undefined,
};
const here = openLink({ kind: 'serial', path, settings: {} }, driver, { clock, patience: 'once' });
const absent = openLink({ kind: 'serial', path: `${path}-absent`, settings: {} }, driver, {
  clock,
  patience: 'forever',
});

absent.open({ ...silence, opened: () => undefined });
here.open({
  ...silence,
  opened: () => {
    here.send('*IDN?\n');
    setTimeout(() => {
      void Promise.all([here.close(), absent.close()]).then(() => writeSync(1, 'closed\n'));
    }, 400);
  },
});

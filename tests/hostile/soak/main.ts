// A day at the bench: `npm run soak [-- --hours 8 --minutes 30]`. Hours of readings in accelerated time and minutes in
// real time through the whole built program; ends with 1 unless memory, file handles and latency stay flat.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { soakAccelerated } from './accelerated.js';
import { soakInRealTime } from './real-time.js';
import { judgeSamples, type Sample } from './watched.js';

const { values } = parseArgs({
  options: {
    hours: { type: 'string', default: '8' },
    minutes: { type: 'string', default: '30' },
  },
});
const [hours, minutes] = [Number(values.hours), Number(values.minutes)];

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const judge = (samples: readonly Sample[]): void => {
  const { table, grows } = judgeSamples(samples);
  say(table);
  say(grows ?? 'flat');
  if (grows !== null) process.exitCode = 1;
};

const folder = mkdtempSync(join(tmpdir(), 'pinwalk-soak-'));
try {
  if (hours > 0) {
    const { samples, readings, sessionBytes, tookS } = await soakAccelerated(folder, hours);
    say(
      `${readings} readings, ${hours} h at 50/s, in ${tookS.toFixed(0)} s; session file ${(sessionBytes / 1e6).toFixed(0)} MB; time for a reading:`,
    );
    judge(samples);
  }
  if (minutes > 0) {
    const { samples, sent, taken } = await soakInRealTime(folder, minutes);
    say(`${taken} of ${sent} readings in ${minutes} min of real time, with the screen; latency:`);
    judge(samples);
    if (taken < sent) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

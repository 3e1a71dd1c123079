// A player that makes no sound: `node player.js LOG FILE` takes as long as the file would sound, and writes to the
// log that it began, that it is still alive (every 5 ms), and that it ended.
import { appendFileSync, readFileSync } from 'node:fs';

const [log, file] = process.argv.slice(2);
const bytes = readFileSync(file);
const lengthMs = (1000 * (bytes.length - 44)) / bytes.readUInt32LE(28);
const write = (what) =>
  appendFileSync(
    log,
    `${JSON.stringify({ what, ms: Date.now(), pid: process.pid, args: process.argv.slice(2) })}\n`,
  );

write('began');
const alive = setInterval(() => write('alive'), 5);
setTimeout(() => {
  clearInterval(alive);
  write('ended');
}, lengthMs);

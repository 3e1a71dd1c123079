// A synthesiser that speaks no words: `node voice.js LOG LANGUAGE FILE TEXT` leaves a tenth of a second of sound
// in the file and writes its arguments to the log.
import { appendFileSync, writeFileSync } from 'node:fs';

const [log, , file] = process.argv.slice(2);
const bytes = Buffer.alloc(44 + 1600, 1);
bytes.write('RIFF', 0, 'latin1');
bytes.write('WAVE', 8, 'latin1');
bytes.writeUInt32LE(16000, 28);
writeFileSync(file, bytes);
appendFileSync(log, `${JSON.stringify({ what: 'rendered', args: process.argv.slice(2) })}\n`);

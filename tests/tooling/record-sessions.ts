// Remakes the recorded sessions: `npx tsx tests/tooling/record-sessions.ts`. The same program gives the same bytes;
// when the walk has changed, remake them and look at what changed in the replay. The drills are told the new hashes.
import { hash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { lessons } from './sessions/lessons.js';
import { recordLesson } from './sessions/record-lesson.js';

const folder = fileURLToPath(new URL('../../recordings/sessions', import.meta.url));

for (const lesson of lessons) {
  const path = `${folder}/${lesson.name}.jsonl`;
  rmSync(path, { force: true });
  await recordLesson(lesson, path);
  process.stdout.write(`${lesson.name}\n`);
}

const drills = fileURLToPath(new URL('../../recordings/drills', import.meta.url));
for (const name of readdirSync(drills)) {
  if (!name.endsWith('.json') || name.endsWith('.schema.json')) continue;
  const path = `${drills}/${name}`;
  const text = readFileSync(path, 'utf8');
  const { session } = JSON.parse(text) as { session: string };
  const sha256 = hash('sha256', readFileSync(`${folder}/${session}`), 'hex');
  writeFileSync(path, text.replace(/("sha256": ")[0-9a-f]{64}/u, `$1${sha256}`));
}

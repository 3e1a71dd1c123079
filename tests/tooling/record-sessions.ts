// Remakes the recorded sessions: `npx tsx tests/tooling/record-sessions.ts`. The same program gives the same bytes;
// when the walk has changed, remake them and look at what changed in the replay.
import { rmSync } from 'node:fs';
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

// Writes the JSON Schemas beside the drivers, profiles and drills. Run `npx tsx tests/tooling/write-schemas.ts`
// whenever a format changes; a test tells when they are stale.
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { jsonSchemaOf } from '../../src/core/json-schema.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const files = {
  driver: 'drivers/driver.schema.json',
  profile: 'profiles/profile.schema.json',
  drill: 'recordings/drills/drill.schema.json',
} as const;

for (const kind of ['driver', 'profile', 'drill'] as const) {
  const schema = JSON.stringify(jsonSchemaOf(kind), null, 2);
  writeFileSync(`${root}/${files[kind]}`, `${schema}\n`);
}
const biome = [
  'biome',
  'format',
  '--config-path=tests/tooling/biome-rules.json',
  '--write',
  ...Object.values(files),
];
process.exitCode = spawnSync('npx', biome, { cwd: root, stdio: 'inherit' }).status ?? 1;

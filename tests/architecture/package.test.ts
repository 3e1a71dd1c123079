import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { programVersion } from '../../src/core/version.js';

const text = (name: string): string =>
  readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');

it('should be one version everywhere', () => {
  expect(programVersion).toBe(JSON.parse(text('package.json')).version);
});

it('should record no download address in the lock file', () => {
  expect(text('package-lock.json')).not.toContain('"resolved"');
});

// The shipped profiles, read from disk for tests that walk all of them.
import { readdirSync, readFileSync } from 'node:fs';
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';

const folder = new URL('../../../profiles/', import.meta.url);

export const profileIds: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
  .map((name) => name.slice(0, -'.json'.length));

export const profileText = (id: string): string =>
  readFileSync(new URL(`${id}.json`, folder), 'utf8');

/** @throws ZodError when the file does not fit the schema. */
export const shippedProfile = (id: string): Profile =>
  profileFormat.parse(JSON.parse(profileText(id)));

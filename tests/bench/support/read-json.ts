// Shipped drivers and profiles, parsed by their schemas.
import { readdirSync, readFileSync } from 'node:fs';
import { type Driver, driverFormat } from '../../../src/core/meter/driver-format.js';
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';

const root = new URL('../../../', import.meta.url);
const json = (path: string): unknown => JSON.parse(readFileSync(new URL(path, root), 'utf8'));

export const readDriver = (id: string): Driver => driverFormat.parse(json(`drivers/${id}.json`));
export const readProfile = (id: string): Profile =>
  profileFormat.parse(json(`profiles/${id}.json`));

const idsIn = (folder: string): string[] =>
  readdirSync(new URL(folder, root))
    .filter((file) => file.endsWith('.json') && !file.endsWith('.schema.json'))
    .map((file) => file.slice(0, -'.json'.length))
    .sort();

export const driverIds = idsIn('drivers/');
export const profileIds = idsIn('profiles/');

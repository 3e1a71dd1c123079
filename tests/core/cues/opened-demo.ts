// The opening of a walk of the shipped demo profile.
import type { EventOf } from '../../../src/core/events.js';
import { profileFormat } from '../../../src/core/profile/profile-format.js';
import { openedWith } from '../../bench/support/live-walk.js';
import { readJsonFile, shippedDriver } from '../../support/driver-files.js';

export const demoProfile = profileFormat.parse(readJsonFile('profiles/demo.json'));
export const demoDriver = shippedDriver('stream-value-unit');

export const openedDemo = (): EventOf<'session-opened'> => openedWith(demoDriver, demoProfile);

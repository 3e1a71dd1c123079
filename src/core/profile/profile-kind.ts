// What makes a file a profile: its format, and what must hold beyond its shape.
import type { DefinitionKind } from '../definition/read-definition.js';
import { checkProfile } from './check-profile.js';
import { type Profile, profileFormat } from './profile-format.js';

export const profileKind: DefinitionKind<Profile> = {
  word: 'profile',
  format: profileFormat.shape.format.value,
  schema: profileFormat,
  check: checkProfile,
};

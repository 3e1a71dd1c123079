// From the text of a profile file to the profile, or to every problem in it with its line.
import {
  type DefinitionKind,
  type DefinitionRead,
  readDefinition,
} from '../definition/read-definition.js';
import { checkProfile } from './check-profile.js';
import { type Profile, profileFormat } from './profile-format.js';

export const profileKind: DefinitionKind<Profile> = {
  word: 'profile',
  format: profileFormat.shape.format.value,
  schema: profileFormat,
  check: checkProfile,
};

export const readProfile = (text: string): DefinitionRead<Profile> =>
  readDefinition(profileKind, text);

// From the text of a profile to the profile, or to every problem in it with its line.
import { type DefinitionRead, readDefinition } from '../../src/core/definition/read-definition.js';
import type { Profile } from '../../src/core/profile/profile-format.js';
import { profileKind } from '../../src/core/profile/profile-kind.js';

export const readProfile = (text: string): DefinitionRead<Profile> =>
  readDefinition(profileKind, text);

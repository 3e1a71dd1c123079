// What the schema cannot say of a profile: that its names refer to one another rightly and that its values make
// sense together. Errors are what would misname a pin or leave a reference hanging; warnings are what will
// probably surprise.
import type { Problem } from '../problems.js';
import { checkExpectations } from './check-expectations.js';
import { checkReferences } from './check-references.js';
import { checkTexts } from './check-texts.js';
import type { Profile } from './profile-format.js';

export const checkProfile = (profile: Profile): readonly Problem[] => {
  const references = checkReferences(profile);
  const values = references.some(({ level }) => level !== 'warning')
    ? []
    : checkExpectations(profile);
  return [...checkId(profile.id), ...references, ...values, ...checkTexts(profile)];
};

/** A profile is found by its id as `ID.json`, on any platform. */
const checkId = (id: string): Problem[] => {
  const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/iu.test(id);
  if (!reserved && /^[^./~-][^/]*$/u.test(id) && !id.endsWith('.')) return [];
  return [
    {
      path: ['id'],
      what: 'this id cannot be the name of a file',
      fix: 'use letters, digits and _ - + #, beginning with a letter or digit',
    },
  ];
};

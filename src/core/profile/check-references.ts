// Every name in a profile leads somewhere, and leads back where it must.
import type { Problem } from '../problems.js';
import { checkLine } from './check-lines.js';
import { checkAreas, checkParts } from './check-parts.js';
import { checkPins } from './check-pins.js';
import { checkObservations, checkSymptoms } from './check-symptoms.js';
import type { Profile } from './profile-format.js';

export const checkReferences = (profile: Profile): readonly Problem[] => [
  ...checkPins(profile),
  ...Object.keys(profile.lines).flatMap((name) => checkLine(profile, name)),
  ...checkParts(profile),
  ...checkAreas(profile),
  ...checkSymptoms(profile),
  ...checkObservations(profile),
];

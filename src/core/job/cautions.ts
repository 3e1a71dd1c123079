// What is confirmed before the first touch: the usual cautions of the trade and the profile's own. Each has an id,
// so that a later wording does not make another caution of it.
import { cleanText } from '../clean-text.js';
import type { Profile } from '../profile/profile-format.js';

const usualCautions = [
  'power-out',
  'discharged',
  'test-voltage',
  'isolation',
  'lithium',
  'heat',
  'first-power',
] as const;
export type UsualCaution = (typeof usualCautions)[number];

export interface CautionToConfirm {
  readonly caution: string;
  readonly says: string;
}

const longestCaution = 300;

export const cautionsFor = (
  { cautions = [] }: Profile,
  usual: Readonly<Record<UsualCaution, string>>,
): readonly CautionToConfirm[] => [
  ...usualCautions.map((caution) => ({ caution, says: usual[caution] })),
  ...cautions.map((says, index) => ({
    caution: `profile-${index + 1}`,
    says: cleanText(says, longestCaution),
  })),
];

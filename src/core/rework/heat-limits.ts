// How long a place may be heated, as the profile says for its areas or for every place, or else the shop. Nothing
// here knows better than they do: without a limit there is none, and the data sheets are what counts.
import type { HeatLimits } from '../profile/heat-limits-format.js';
import type { Profile } from '../profile/profile-format.js';

/** A part of the profile, or an area by name. */
export interface Place {
  readonly part?: string | undefined;
  readonly area?: string | undefined;
}

/** What heat on a place counts for: an area of the profile, or the place alone. */
export interface Heated {
  /** Name of the area, or null where it is the place alone. */
  readonly area: string | null;
  readonly limits: HeatLimits;
}

const byDefault = (profile: Profile, shop: HeatLimits): HeatLimits => ({
  ...shop,
  ...profile.heat,
});

/** Every area the place lies in, each with its limits; the place alone where it lies in none. */
export const heatedAreas = (
  profile: Profile,
  shop: HeatLimits,
  place: Place,
): readonly Heated[] => {
  const usual = byDefault(profile, shop);
  const found = Object.entries(profile.areas ?? {})
    .filter(([area, { parts }]) => area === place.area || parts.some((part) => part === place.part))
    .map(([area, { heat }]) => ({ area, limits: { ...usual, ...heat } }));
  return found.length > 0 ? found : [{ area: null, limits: usual }];
};

const samePlace = (a: Place, b: Place): boolean => a.part === b.part && a.area === b.area;

/** Whether heat on `place` counts for what is `heated`. */
export const isHeatedBy = (
  profile: Profile,
  { area }: Heated,
  place: Place,
  other: Place,
): boolean => {
  if (area === null) return samePlace(place, other);
  const parts = profile.areas?.[area]?.parts ?? [];
  return other.area === area || parts.some((part) => part === other.part);
};

export const placeName = ({ part, area }: Place): string | null => part ?? area ?? null;

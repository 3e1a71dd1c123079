// What the options of a command say of the meter: where it is, how to talk to it, and what it is to measure.
import type { Driver } from '../core/meter/driver-format.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { type Definition, loadDriver } from '../store/load-definitions.js';
import type { LinkKind } from './open-feed.js';
import { exitCodes, UserError } from './user-error.js';

type Measure = Profile['measure'];

export interface MeterOptions {
  readonly link?: string;
  readonly driver?: string;
  readonly function?: Measure['function'];
  readonly polarity?: Measure['polarity'];
  /** Full scale, in ohm or volt. */
  readonly range?: number;
}

/** @throws UserError when no link was given. */
export const askedLink = (link: string | undefined): string => {
  if (link !== undefined) return link;
  throw new UserError(english.refusals.whichMeter, exitCodes.usage);
};

/** The bench imitates any driver; typed values and logs need none. */
export const driverFor = (kind: LinkKind, asked: string | undefined): Definition<Driver> | null => {
  const id = asked ?? (kind === 'virtual' ? 'stream-fields-flags' : undefined);
  return id === undefined ? null : loadDriver(id);
};

/** @param usual what is measured where the options do not say. */
export const askedMeasure = (
  { function: name, polarity, range }: MeterOptions,
  usual: Measure,
): Measure => ({
  ...usual,
  ...(name === undefined ? {} : { function: name }),
  ...(polarity === undefined ? {} : { polarity }),
  ...(range === undefined ? {} : { range }),
});

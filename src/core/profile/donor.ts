// A donor board walked beside the patient: each pin is read on the donor first, then on the patient. The donor's pins
// and lines bear names of their own, so that nothing it reads can be taken for the patient's.
import type { PlannedPin } from './plan.js';

/** How a donor takes part in a walk. */
export const donorWays = ['beside'] as const;
export type DonorWay = (typeof donorWays)[number];

const prefix = 'donor ';

/** @example onDonor('7') // 'donor 7' */
export const onDonor = (name: string): string => `${prefix}${name}`;

/** @example pinOnBoard('donor 7') // 'donor pin 7' */
export const pinOnBoard = (pin: string): string => {
  const { board, name } = offBoard(pin);
  return board === 'donor' ? `${prefix}pin ${name}` : `pin ${name}`;
};

/** The pin or line of the connector behind a name, and the board it is on. */
export const offBoard = (
  name: string,
): { readonly board: 'donor' | 'patient'; readonly name: string } =>
  name.startsWith(prefix)
    ? { board: 'donor', name: name.slice(prefix.length) }
    : { board: 'patient', name };

/** Is a donor walked beside the patient? */
export const walksDonor = ({ pins }: { readonly pins: readonly PlannedPin[] }): boolean =>
  pins[0]?.board === 'donor';

/** Each pin on the donor, then the same pin on the patient. */
export const besideDonor = (pins: readonly PlannedPin[]): readonly PlannedPin[] =>
  pins
    .flatMap((pin): readonly PlannedPin[] => [donorOf(pin), pin])
    .map((pin, index) => ({ ...pin, index }));

const donorOf = (pin: PlannedPin): PlannedPin => ({
  ...pin,
  pin: onDonor(pin.pin),
  line: onDonor(pin.line),
  group: pin.group === undefined ? undefined : onDonor(pin.group),
  mate: pin.mate === undefined ? undefined : onDonor(pin.mate),
  board: 'donor',
});

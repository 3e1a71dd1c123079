// Where on its route something is looked at: at a pin, at a place along a line, or at a pin under pressure. Refuses
// pins, lines, places and parts the model does not have.
import type { View } from './sight.js';
import type { Route, SuspectModel } from './suspect-model.js';

/** Where along a line the probe stands: on one terminal of a part, or on the last track before the chip. */
export type Place =
  | { readonly side: 'near' | 'far'; readonly part: string }
  | { readonly side: 'chip' };

export interface PinLook {
  readonly kind: 'pin';
  readonly pin: string;
}

export interface PlaceLook {
  readonly kind: 'place';
  readonly line: string;
  readonly place: Place;
}

export interface PressLook {
  readonly kind: 'press';
  readonly line: string;
  /** The part pressed, or the connector; null for a press on no part in particular. */
  readonly part: string | null;
  /** The pin the probe stands on; the line's first where it is not told. */
  readonly pin?: string;
}

export type Look = PinLook | PlaceLook | PressLook;

/** @throws RangeError for what the model does not have. */
export const lookedAt = (
  model: SuspectModel,
  look: Look,
): { readonly route: Route; readonly view: View } => {
  if (look.kind === 'pin') return { route: routeAtPin(model, look.pin), view: atPin(look.pin) };
  if (look.kind === 'place') {
    const route = routeOfLine(model, look.line);
    return { route, view: atPlace(route, look.place) };
  }
  const route = routeOfLine(model, look.line, look.pin);
  return { route, view: atPin(look.pin ?? (route.pins[0] as string)) };
};

/** False for what the model does not have, as a session from elsewhere may name. */
export const isOnBoard = (model: SuspectModel, look: Look): boolean => {
  if (look.kind === 'pin') return model.routes.some(({ pins }) => pins.includes(look.pin));
  return model.routes.some(({ line, pins, stops }) => {
    if (line !== look.line) return false;
    if (look.kind === 'press') return look.pin === undefined || pins.includes(look.pin);
    const { place } = look;
    return (
      place.side === 'chip' || stops.some(({ kind, id }) => kind === 'part' && id === place.part)
    );
  });
};

const atPin = (pin: string): View => ({ gap: 0, pin });

const routeAtPin = ({ routes }: SuspectModel, pin: string): Route => {
  const route = routes.find(({ pins }) => pins.includes(pin));
  if (route === undefined) throw new RangeError(`the profile has no pin ${pin}`);
  return route;
};

const routeOfLine = ({ routes }: SuspectModel, line: string, pin?: string): Route => {
  const route = routes.find(
    (known) => known.line === line && (pin === undefined || known.pins.includes(pin)),
  );
  if (route !== undefined) return route;
  const where = pin === undefined ? '' : ` on pin ${pin}`;
  throw new RangeError(`the profile has no line ${line}${where}`);
};

const atPlace = ({ stops, line }: Route, place: Place): View => {
  if (place.side === 'chip') {
    const chip = stops.findLastIndex(({ kind }) => kind === 'chip');
    return { gap: chip < 0 ? stops.length : chip, pin: null };
  }
  const at = stops.findIndex(({ kind, id }) => kind === 'part' && id === place.part);
  if (at < 0) throw new RangeError(`line ${line} does not pass through ${place.part}`);
  return { gap: place.side === 'near' ? at : at + 1, pin: null };
};

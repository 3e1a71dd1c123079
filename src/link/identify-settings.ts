// Which serial settings are worth trying on an unknown meter, in which order, and how a setting is written in a
// link name. Pure.
import type { Driver } from '../core/meter/driver-format.js';
import type { SerialName, SerialSettings } from './link-name.js';
import { type SerialWire, wireOf } from './serial-dial.js';

/** Speeds that meters with a serial port commonly use (common practice, no source), likeliest first. */
const usualSpeeds = [9600, 115200, 19200, 38400, 57600, 4800, 2400, 1200] as const;

export interface Setting {
  readonly wire: SerialWire;
  /** Drivers that ask for exactly this setting. */
  readonly drivers: readonly Driver[];
}

const keyOf = (wire: SerialWire): string =>
  [wire.baud, wire.dataBits, wire.parity, wire.stopBits, wire.dtr, wire.rts].join(' ');

const plainAt = (baud: number): SerialWire => ({ baud, dataBits: 8, parity: 'none', stopBits: 1 });

/** What most drivers ask for comes first. What the link name fixes is not varied. */
export const settingsToTry = (name: SerialName, drivers: readonly Driver[]): readonly Setting[] => {
  const settings = new Map<string, { wire: SerialWire; drivers: Driver[] }>();
  const add = (wanted: SerialWire, driver?: Driver): void => {
    const wire = wireOf(wanted, name.settings);
    const known = settings.get(keyOf(wire)) ?? { wire, drivers: [] };
    if (driver) known.drivers.push(driver);
    settings.set(keyOf(wire), known);
  };
  for (const driver of drivers) add(driver.wire.serial, driver);
  for (const baud of usualSpeeds) add(plainAt(baud));
  return [...settings.values()].sort((a, b) => b.drivers.length - a.drivers.length);
};

const written: readonly [keyof SerialSettings, string][] = [
  ['baud', 'baud'],
  ['dataBits', 'data'],
  ['parity', 'parity'],
  ['stopBits', 'stop'],
  ['dtr', 'dtr'],
  ['rts', 'rts'],
];

/** The link name under which `driver` finds the port set as `wire`. */
export const linkText = (path: string, wire: SerialWire, driver: Driver): string => {
  const pairs = written.flatMap(([key, word]) => {
    const value = wire[key];
    if (value === undefined || value === driver.wire.serial[key]) return [];
    return [`${word}=${value === true ? 'on' : value === false ? 'off' : value}`];
  });
  return pairs.length === 0 ? `serial:${path}` : `serial:${path}?${pairs.join('&')}`;
};

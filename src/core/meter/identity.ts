// Reads the answer to `*IDN?` (IEEE 488.2, 10.14): maker, model, serial number and firmware. Forgiving about
// quotes and extra commas, since makers are; what it returns is cleaned text.
import { cleanText } from '../clean-text.js';
import { parseNrf } from './number-forms.js';

export interface MeterIdentity {
  readonly maker: string;
  readonly model: string;
  /** Null where the instrument sends `0`, its way of saying none. */
  readonly serial: string | null;
  /** May hold several revision codes, commas included. */
  readonly firmware: string | null;
}

const longestField = 72;

/** A quoted field may hold commas; a doubled quote inside stands for one. */
const fieldsOf = (text: string): string[] => {
  const fields = text.match(/(?:"(?:[^"]|"")*"|[^,"])+|(?<=,)(?=,|$)|^(?=,)/gu) ?? [];
  return fields.map((field) => {
    const bare = field.trim();
    const quoted = bare.length > 1 && bare.startsWith('"') && bare.endsWith('"');
    return cleanText(quoted ? bare.slice(1, -1).replaceAll('""', '"').trim() : bare, longestField);
  });
};

const none = (field: string | undefined): string | null =>
  field === undefined || field === '' || field === '0' ? null : field;

/**
 * The identity, or null where the answer is not one: no maker and model, or a number where the maker belongs,
 * which is an error entry or a list of readings.
 * @example parseIdentity('ACME,DMM-1,0,1.02-01-03')?.serial // null
 */
export const parseIdentity = (text: string): MeterIdentity | null => {
  const [maker, model, serial, ...firmware] = fieldsOf(text.trim());
  if (!maker || !model || parseNrf(maker) !== null) return null;
  return { maker, model, serial: none(serial), firmware: none(firmware.join(',')) };
};

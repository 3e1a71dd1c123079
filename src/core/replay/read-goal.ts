// Where in a session a person wants to go, as written: seconds, minutes and seconds, an event, or a pin. Refuses
// anything else in one line that says what would be right.
import { quoted } from '../problems.js';
import type { Control } from './control.js';

const longestNumber = 12;

/**
 * @param pins the names of the session's pins; a name that could be a time needs "pin:" before it.
 * @throws RangeError with one line for the person who wrote it.
 */
export const readGoal = (written: string, pins: readonly string[]): Control => {
  const text = written.trim();
  const named = /^pin[:\s]\s*(.+)$/iu.exec(text)?.[1];
  if (named !== undefined) {
    const pin = pinNamed(named, pins);
    if (pin !== undefined) return { control: 'to-pin', pin };
    throw new RangeError(`there is no pin ${quoted(named)} in this session`);
  }
  const event = /^event[:\s]\s*(\d+)$/iu.exec(text)?.[1];
  if (event !== undefined && event.length <= longestNumber) {
    return { control: 'to-event', at: Number(event) };
  }
  const t = secondsOf(text);
  if (t !== null) return { control: 'to-time', t };
  const pin = pinNamed(text, pins);
  if (pin !== undefined) return { control: 'to-pin', pin };
  throw new RangeError(
    `${quoted(text)} is no place in a session; write seconds (95), minutes (1:35), pin:8 or event:200`,
  );
};

const pinNamed = (name: string, pins: readonly string[]): string | undefined =>
  pins.find((pin) => pin === name) ?? pins.find((pin) => pin.toLowerCase() === name.toLowerCase());

/** "95", "95.5", "1:35" or "1:02:03" in seconds; null for anything else. */
const secondsOf = (text: string): number | null => {
  if (!/^(\d{1,6}:){0,2}\d{1,9}(\.\d{1,6})?$/u.test(text)) return null;
  const parts = text.split(':').map(Number);
  if (parts.slice(1).some((part) => part >= 60)) return null;
  return parts.reduce((sum, part) => sum * 60 + part, 0);
};

// Cells that tables of what happened have in common: the moment that names the row, and the pin it was at.
import { name, say, value } from '../words/report-phrase.js';
import type { Cell } from './document.js';
import type { Times } from './times.js';

export const momentCell = (times: Times, t: number): Cell => ({
  text: say`${value(times.momentOf(t))}`,
  heads: true,
});

/** Empty for what was at no pin. */
export const pinCell = (pin: string | null | undefined): Cell => ({
  text: pin === null || pin === undefined ? '' : say`${name(pin)}`,
});

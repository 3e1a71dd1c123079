// Residual volts at the keyboard: place by place, the meter's reading taken when the technician says that the probe
// is there. A charged line is discharged and measured again; nothing is passed over without a reason.
import { cleanText } from '../core/clean-text.js';
import type { WalkEvent } from '../core/events.js';
import {
  isDischarged,
  type ResidualPlace,
  readVoltmeter,
  residualLimitV,
  type Voltmeter,
} from '../core/job/residual.js';
import { formatReading } from '../core/measure/format-reading.js';
import type { Reading } from '../core/reading.js';
import type { JobWords } from '../core/words/job-words.js';
import type { Asking } from './asking.js';

export interface ResidualWorld extends Asking {
  /** What the meter said since the last call, oldest first. */
  readings(): readonly Reading[];
  /** Writes an event to the session before anything is said of it. */
  keep(event: WalkEvent): void;
  now(): number;
}

export const measureResidual = async (
  places: readonly ResidualPlace[],
  world: ResidualWorld,
  words: JobWords['residual'],
): Promise<void> => {
  world.say(words.title(formatReading(residualLimitV, null, 'V')));
  for (const place of places) {
    if (!(await measurePlace(place, world, words))) return;
  }
};

/** False when the rest is left out. */
const measurePlace = async (
  { line, pin }: ResidualPlace,
  world: ResidualWorld,
  words: JobWords['residual'],
): Promise<boolean> => {
  for (;;) {
    world.say(words.place(line, pin));
    world.readings();
    const answer = await world.ask(words.ask);
    if (/^s(kip)?$/iu.test(answer)) {
      const why = await world.ask(words.why);
      const reason = why === '' ? words.askedNot : cleanText(why, 300);
      world.keep({ type: 'residual-skipped', t: world.now(), reason });
      world.say(words.skipped(reason));
      return false;
    }
    const typed = typedVolts(answer);
    const shown: Voltmeter = answer === '' ? readVoltmeter(world.readings()) : typed;
    if (answer !== '' && typed.shows === 'nothing') {
      world.say(words.notVolts(cleanText(answer, 20)));
    } else if (shown.shows !== 'volts' || !shown.steady) {
      world.say(refusal(shown, words));
    } else {
      const { volts } = shown;
      world.keep({
        type: 'residual-measured',
        t: world.now(),
        line,
        ...(pin === null ? {} : { pin }),
        volts,
        limit: residualLimitV,
        by: answer === '' ? 'meter' : 'typed',
      });
      world.say(words.measured(line, formatReading(volts, null, 'V'), isDischarged(volts)));
      if (isDischarged(volts)) return true;
      world.say(words.again);
    }
  }
};

const typedVolts = (text: string): Voltmeter =>
  /^[+-]?\d{1,4}(?:[.,]\d{1,6})?\s*V?$/iu.test(text)
    ? { shows: 'volts', volts: Number.parseFloat(text.replace(',', '.')), steady: true }
    : { shows: 'nothing' };

const refusal = (shown: Voltmeter, words: JobWords['residual']): string => {
  switch (shown.shows) {
    case 'nothing':
      return words.nothing;
    case 'other-function':
      return words.turnDial;
    case 'held':
      return words.held;
    case 'overload':
      return words.overload;
    case 'volts':
      return words.restless;
  }
};

// One walk from a seed: layout, meter, truth at every pin, the hand's work and the meter's readings, as a
// program gets them. The same mixture, seed and number give the same walk.
import type { Input } from '../../../src/core/inputs.js';
import { seeded } from '../shared/random.js';
import { drawLayout } from './draw-layout.js';
import { drawMeter, drawTold } from './draw-meter.js';
import { drawPins } from './draw-pins.js';
import type { Mixture } from './mixture.js';
import { ProbeHand } from './probe-hand.js';
import { readContacts } from './read-contacts.js';
import type { GeneratedWalk } from './walk-truth.js';

export const generateWalk = (mixture: Mixture, seed: number, number: number): GeneratedWalk => {
  const name = `${mixture.name}-${seed}-${number}`;
  const random = seeded(name);
  const { board, meter: meterLaws, hand } = mixture;
  const meter = drawMeter(meterLaws, board.function, random.fork('meter'));
  const told = drawTold(meterLaws, meter, random.fork('told'));
  const profile = drawLayout(board, name, random.fork('layout'));
  const pins = drawPins(profile, board, hand.saysNext, meter, told, random.fork('pins'));
  const work = new ProbeHand(mixture, meter, pins, random.fork('hand')).walk();
  const readings = readContacts(
    work.pieces,
    work.contacts,
    work.end,
    meter,
    meterLaws,
    board.function,
    random.fork('readings'),
  );
  const inputs: Input[] = [
    ...readings.map((reading): Input => ({ kind: 'reading', reading })),
    ...work.marks.map(
      ({ t, act }): Input => ({ kind: 'act', t: Number(t.toFixed(3)), act: { act } }),
    ),
  ];
  const time = (input: Input): number => (input.kind === 'reading' ? input.reading.t : input.t);
  inputs.sort((a, b) => time(a) - time(b));
  return { name, profile, meter, told, pins, contacts: work.contacts, inputs };
};

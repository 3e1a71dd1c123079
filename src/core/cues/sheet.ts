// Every cue's tone, told apart by rhythm as much as by pitch, for people who hear badly. One short note means
// "taken, on to the next pin": alone it is a normal reading, and it ends the figure of any other verdict that
// is settled. A figure without it asks for the same pin again. Questions are short notes and a rising glide.
import type { Cue, CueKind } from './cue.js';
import { levels } from './cue.js';
import type { Note, Tone } from './tone.js';

const gapMs = 45;
const note = (ms: number, fromHz: number, toHz = fromHz): Note => ({
  fromHz,
  toHz,
  ms,
  restMs: gapMs,
});
const tick = (hz: number): Note => note(35, hz);
const brief = (hz: number): Note => note(75, hz);
const even = (hz: number): Note => note(150, hz);
const long = (hz: number): Note => note(380, hz);
const rise = (fromHz: number, toHz: number): Note => note(240, fromHz, toHz);
const trill = (n: number, ...hz: readonly [number, number]): Tone =>
  Array.from({ length: n }, (_, i) => ({ ...note(40, hz[i % 2] as number), restMs: 8 }));

const step = brief(880);
const taken = (figure: Tone): Tone => [
  ...figure.slice(0, -1),
  ...figure.slice(-1).map((last) => ({ ...last, restMs: 130 })),
  step,
];

const figures = {
  low: [brief(740), brief(587), even(440)],
  high: [even(440), brief(587), brief(740)],
  short: [long(330)],
  open: [brief(523), brief(523), brief(523)],
  unsure: [even(587), brief(494), even(587)],
  wobble: trill(6, 523, 659),
  unread: [even(392)],
} as const satisfies Record<string, Tone>;

const alarm = [even(415), even(330)] as const;

type Line = Pick<Cue, 'level' | 'bells' | 'tone'>;
const word = (bells: number, ...tone: Tone): Line => ({ level: levels.word, bells, tone });
const stop = (bells: number, ...tone: Tone): Line => ({ level: levels.stop, bells, tone });
const echo = (...tone: Tone): Line => ({ level: levels.echo, bells: 0, tone });

export const sheet: Readonly<Record<CueKind, Line>> = {
  normal: word(1, step),
  'donor-normal': word(1, brief(1175), tick(1175)),
  low: word(2, ...taken(figures.low)),
  high: word(2, ...taken(figures.high)),
  short: word(2, ...taken(figures.short)),
  open: word(2, ...taken(figures.open)),
  unsure: word(2, ...taken(figures.unsure)),
  wobble: word(2, ...taken(figures.wobble)),
  unread: word(1, ...taken(figures.unread)),
  'low-again': word(2, ...figures.low),
  'high-again': word(2, ...figures.high),
  'short-again': word(2, ...figures.short),
  'open-again': word(2, ...figures.open),
  'unsure-again': word(2, ...figures.unsure),
  'wobble-again': word(2, ...figures.wobble),

  'question-open': word(3, brief(523), rise(523, 1047)),
  'question-same-or-next': word(3, brief(523), brief(523), rise(523, 1047)),
  'question-go-back': word(3, even(349), brief(523), rise(523, 1047)),
  'question-shifted': word(3, brief(523), brief(523), brief(523), rise(523, 1047)),

  'touch-ground': word(1, brief(349), even(349), brief(349)),
  'ground-first': word(1, brief(349), even(349), brief(349), brief(523)),
  'ground-missed': word(2, even(349), brief(294), even(294), even(294)),
  'ground-good': word(1, brief(349), brief(440), brief(523), long(698)),
  'ground-skipped': word(1, brief(349), brief(440), brief(523), even(349)),
  'ground-doubted': word(3, even(523), even(440), even(349)),

  press: stop(1, even(1047)),
  release: stop(2, brief(587), brief(587)),
  'press-begun': word(1, even(784), long(784), even(784), brief(659)),
  'press-sham': word(1, long(784), brief(784), brief(659), brief(523)),
  'press-place': word(1, long(784), brief(784), brief(659)),
  'press-answers': word(2, brief(587), long(784), even(1047)),
  'press-nothing': word(1, even(440), long(440), even(440)),
  'press-unclear': word(1, brief(494), long(440), brief(494), brief(494)),
  'probe-place': word(1, tick(784), brief(784), long(659)),
  suspect: word(2, brief(659), long(659), brief(784)),
  'press-compared': word(1, brief(587), long(784), even(1047), brief(1047)),
  'press-all': word(2, even(440), even(440), long(440), even(330)),
  'press-ended': word(1, even(784), long(587), brief(587)),
  'press-reads': word(1, rise(587, 1047)),
  'press-lost': word(1, rise(1047, 587), brief(587)),
  'press-traced': word(1, even(784), long(587), brief(784), brief(784)),
  held: stop(4, ...alarm),
  'lead-off': stop(4, ...alarm, brief(330)),
  'link-lost': stop(4, ...alarm, long(294)),
  'meter-silent': stop(4, ...alarm, brief(330), brief(330)),
  'file-blocked': stop(4, ...alarm, brief(330), brief(330), brief(330)),
  paused: stop(2, long(523), even(392)),
  realigned: stop(4, long(440), brief(659), long(440)),
  freed: stop(1, brief(523), even(659)),
  continued: stop(1, even(392), long(523)),
  'link-back': stop(1, brief(392), even(523), long(659)),
  'file-written': stop(1, brief(392), even(523), even(659)),

  'heat-on': stop(1, brief(392), long(392), long(523)),
  'heat-off': stop(1, long(523), long(392), brief(392)),
  'heat-near': stop(3, brief(784), brief(784), brief(784), brief(784), brief(784)),
  'heat-passed': stop(4, ...trill(8, 784, 587), long(494)),
  'control-moved': word(3, even(494), brief(587), brief(587), even(494)),
  'recheck-good': word(1, even(523), brief(659), brief(784), long(1047)),
  'recheck-not-good': word(3, long(440), even(392), brief(349)),

  'meter-error': word(2, ...trill(4, 370, 311), even(311)),
  'readings-ended': word(1, long(440), long(330)),
  finished: word(1, brief(523), brief(659), long(784)),
  'reply-asked': word(2, tick(784), tick(784), even(988)),
  'reply-cancelled': word(1, tick(784), tick(784), long(392)),
  'reply-shadowed': word(2, tick(784), long(330), long(330)),
  refused: word(1, tick(330), even(277)),
  place: echo(tick(659), tick(784)),
  heard: echo(tick(784)),
};

// What may be at fault, likeliest first, as ranked last in the session, and the probe that would tell most.
import type { EventOf } from '../../events.js';
import { selectChain } from '../../select/chain.js';
import { isLead } from '../../suspects/priors.js';
import { join, name, type Phrase, say } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Block, Cell, Section } from '../document.js';
import type { Report } from '../report.js';
import { writtenPercent } from '../written.js';

type Ranked = EventOf<'suspects-ranked'>;

/** Null where nothing was ranked. */
export const suspectsSection = (
  { account }: Report,
  { shared, technical }: TechnicalLanguage,
): Section | null => {
  const { ranked } = account.press;
  if (ranked === null) return null;
  const words = technical.suspects;
  const row = (place: Phrase, lines: Phrase, probability: number): Cell[] => [
    { text: place, heads: true },
    { text: lines },
    { text: say`${writtenPercent(probability)}` },
  ];
  const blocks: Block[] = [
    {
      kind: 'table',
      caption: words.title,
      columns: [
        { title: words.place, as: 'words' },
        { title: words.lines, as: 'words' },
        { title: words.probability, as: 'figures' },
      ],
      rows: [
        ...ranked.suspects.map((suspect) =>
          row(
            suspectInWords(suspect, shared),
            join(suspect.lines.map(name), shared.comma),
            suspect.probability,
          ),
        ),
        row(words.other, '', ranked.other),
        row(words.none, '', ranked.none),
      ],
    },
  ];
  for (const [index, { line, pin }] of account.state.plan.pins.entries()) {
    const { verdict } = account.state.pins[index] ?? { verdict: 'unread' };
    const chain =
      verdict === 'normal' || verdict === 'unread' ? null : selectChain(account.state, index);
    if (chain === null) continue;
    blocks.push({
      kind: 'table',
      caption: words.chain(name(pin), name(line)),
      titled: true,
      columns: [
        { title: words.place, as: 'words' },
        { title: words.probability, as: 'figures' },
      ],
      rows: chain.places.map((place) => [
        { text: say`${name(place.name)}`, heads: true },
        { text: say`${writtenPercent(place.probability)}` },
      ]),
    });
  }
  if (ranked.next !== null) {
    const { line, pin, part } = ranked.next;
    const names = {
      line: name(line),
      pin: pin === undefined ? null : name(pin),
      part: part === undefined ? null : name(part),
    };
    blocks.push({ kind: 'text', text: words.next(ranked.next, names) });
  }
  blocks.push({ kind: 'text', text: words.explained });
  return { id: 'suspects', title: words.title, blocks };
};

/** A lead that a later version names is shown by its own name. */
export const suspectInWords = (
  { where, id }: Pick<Ranked['suspects'][number], 'where' | 'id'>,
  { place, lead }: SharedWords,
): Phrase => {
  if (where !== 'lead') return place(where, name(id));
  return isLead(id) ? lead[id] : say`${name(id)}`;
};

// The donor board beside the patient, pin by pin: what each read with its uncertainty, and how far the patient is off.
import { name, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Cell, Section } from '../document.js';
import { marked } from '../marked.js';
import type { PinFacts } from '../pin-facts.js';
import { exactReading } from '../readings.js';

/** Null where no donor was walked beside the patient. */
export const donorSection = (
  pins: readonly PinFacts[],
  { shared, technical }: TechnicalLanguage,
  unit: string,
): Section | null => {
  const words = technical.donor;
  const read = ({ verdict, ...record }: PinFacts['record']): Cell =>
    verdict === 'unread'
      ? { text: '', verdict: marked(verdict, shared) }
      : { text: exactReading(record, unit, shared), verdict: marked(verdict, shared) };
  const rows = pins.flatMap(({ planned, record, donor }): (readonly Cell[])[] =>
    donor === null
      ? []
      : [
          [
            { text: say`${name(planned.pin)}`, heads: true },
            { text: say`${name(planned.line)}` },
            read(donor),
            read(record),
            // Between two contacts with next to nothing a share says nothing.
            { text: planned.kind === 'ground' ? '' : offBy(donor.value, record.value) },
          ],
        ],
  );
  if (rows.length === 0) return null;
  return {
    id: 'donor',
    title: words.title,
    blocks: [
      {
        kind: 'table',
        caption: words.caption,
        columns: [
          { title: technical.pins.pin, as: 'words' },
          { title: technical.pins.line, as: 'words' },
          { title: words.donor, as: 'figures' },
          { title: words.patient, as: 'figures' },
          { title: words.off, as: 'figures' },
        ],
        rows,
      },
      { kind: 'text', text: words.explained },
    ],
  };
};

const offBy = (donor: number | null, patient: number | null) => {
  if (donor === null || patient === null || donor === 0) return '';
  const percent = (100 * (patient - donor)) / donor;
  const sign = percent < 0 ? '−' : '+';
  return Math.abs(percent) >= 1000 ? '' : say`${value(`${sign}${Math.abs(percent).toFixed(1)} %`)}`;
};

// The report as a document without form. Each section stands in a file of its own; a section that has nothing to
// say yet leaves itself out.

import { siUnit } from '../reading.js';
import { shortFingerprint } from '../session-chain.js';
import { value } from '../words/report-phrase.js';
import type { ReportWords } from '../words/report-words.js';
import type { ReportDocument, Section } from './document.js';
import { aboutOf } from './owner/about.js';
import { summaryOf } from './owner/headline.js';
import { noticesOf } from './owner/notices.js';
import { whatFailed } from './owner/what-failed.js';
import { dataNote, whatWasBrought } from './owner/what-was-brought.js';
import { whatWasChecked } from './owner/what-was-checked.js';
import { whatWasDone } from './owner/what-was-done.js';
import { whatWasNotChecked } from './owner/what-was-not-checked.js';
import { whyWeThinkSo } from './owner/why.js';
import { pinsOf } from './pin-facts.js';
import type { Report } from './report.js';
import { technicalPages } from './technical/technical-pages.js';

export const buildReport = (report: Report, words: ReportWords): ReportDocument => {
  const { account, source, made } = report;
  const { shared, owner, inDetail } = words;
  const { function: measure } = account.opened.measure;
  const pins = pinsOf(account);
  const unit = siUnit(measure);
  return {
    language: shared.language,
    direction: shared.direction,
    title: owner.title,
    about: aboutOf(report, words),
    notices: noticesOf(account, words),
    summary: summaryOf(report, pins, words),
    owner: present([
      whatWasBrought(account, words),
      whatFailed(account, pins, words, unit),
      whyWeThinkSo(account, pins, words),
      whatWasDone(report, pins, words),
      whatWasChecked(report, pins, words),
      whatWasNotChecked(report, pins, words),
      {
        id: 'data',
        title: owner.data.title,
        blocks: [...dataNote(account, words), owner.data.text].map((text) => ({
          kind: 'text',
          text,
        })),
      },
    ]),
    footer: owner.footer(value(shortFingerprint(source.fingerprint)), shared.day(made.day)),
    technical: {
      language: inDetail.shared.language,
      direction: inDetail.shared.direction,
      title: inDetail.technical.title,
      sections: technicalPages(report, pins, inDetail),
    },
  };
};

const present = (sections: readonly (Section | null)[]): readonly Section[] =>
  sections.filter((section) => section !== null);

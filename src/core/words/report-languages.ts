// The languages in which a report can be written. A further one is one file, such as the German one, and one line here.
import { arabicReport } from './arabic-report.js';
import { englishReport } from './english-report.js';
import { germanReport } from './german-report.js';
import type { ReportWords } from './report-words.js';

export const reportLanguages = {
  en: englishReport,
  ar: arabicReport,
  de: germanReport,
} as const satisfies Readonly<Record<string, ReportWords>>;

export type ReportLanguage = keyof typeof reportLanguages;

export const reportLanguageCodes = Object.keys(reportLanguages) as ReportLanguage[];

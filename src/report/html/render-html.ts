// The report as one HTML file that needs nothing beside itself: the owner's page first, the technical pages after.
import type { ReportDocument, Section } from '../../core/report/document.js';
import { plain } from '../../core/words/report-phrase.js';
import { blockHtml } from './blocks-html.js';
import { stripHtml } from './connector-html.js';
import { escapeHtml } from './escape-html.js';
import { pagePolicy } from './page-policy.js';
import { pageStyle } from './page-style.js';
import { phraseHtml } from './phrase-html.js';
import { markShapes } from './verdict-marks.js';

export const renderHtml = (report: ReportDocument, program: string): string => {
  const { language, direction, title, about, technical } = report;
  const inTitle = [title, ...about.slice(0, 1)].map(plain).join(' · ');
  return `<!doctype html>
<html lang="${escapeHtml(language)}" dir="${direction}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escapeHtml(pagePolicy(pageStyle))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light">
<meta name="generator" content="pinwalk ${escapeHtml(program)}">
<title>${escapeHtml(inTitle)}</title>
<style>${pageStyle}</style>
</head>
<body>
${markShapes}
<main>
${ownerHtml(report)}
<div class="technical" lang="${escapeHtml(technical.language)}" dir="${technical.direction}">
<h2 class="part">${phraseHtml(technical.title)}</h2>
${technical.sections.map((section) => sectionHtml(section, 'h3')).join('\n')}
</div>
</main>
</body>
</html>
`;
};

const ownerHtml = ({ title, about, notices, summary, owner, footer }: ReportDocument): string =>
  `<div class="owner">
<header><h1>${phraseHtml(title)}</h1>
${about.map((line) => `<p class="about">${phraseHtml(line)}</p>`).join('\n')}</header>
${noticesHtml(notices)}
<div class="summary ${summary.tone}"><p class="headline">${phraseHtml(summary.headline)}</p>
${stripHtml(summary.pins)}
<p class="tally">${phraseHtml(summary.tally)}</p></div>
<div class="answers">
${owner.map((section) => sectionHtml(section, 'h2')).join('\n')}
</div>
<p class="footer">${phraseHtml(footer)}</p>
</div>`;

const noticesHtml = (notices: ReportDocument['notices']): string => {
  const lines = notices.map(
    ({ title, text }) => `<p><strong>${phraseHtml(title)}</strong> ${phraseHtml(text)}</p>`,
  );
  return lines.length === 0 ? '' : `<div class="notices">${lines.join('')}</div>`;
};

const sectionHtml = ({ id, title, blocks }: Section, heading: 'h2' | 'h3'): string =>
  `<section id="${escapeHtml(id)}" aria-labelledby="${escapeHtml(id)}-title"><${heading} id="${escapeHtml(id)}-title">${phraseHtml(title)}</${heading}>
${blocks.map(blockHtml).join('\n')}</section>`;

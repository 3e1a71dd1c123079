// The report as Markdown, with the same sections as the page.
import type { ReportDocument, Section } from '../../core/report/document.js';
import { blockMarkdown } from './blocks-markdown.js';
import { phraseWriter, type WritePhrase } from './phrase-markdown.js';

export const renderMarkdown = (report: ReportDocument): string => {
  const { title, about, notices, summary, owner, footer, technical } = report;
  const write = phraseWriter(report.direction);
  const writeTechnical = phraseWriter(technical.direction);
  const parts = [
    `# ${write(title)}`,
    about.map(write).join('  \n'),
    ...notices.map((notice) => `> **${write(notice.title)}** ${write(notice.text)}`),
    `**${write(summary.headline)}**`,
    write(summary.tally),
    ...owner.flatMap((section) => sectionMarkdown(section, '##', write)),
    write(footer),
    '---',
    `## ${writeTechnical(technical.title)}`,
    ...technical.sections.flatMap((section) => sectionMarkdown(section, '###', writeTechnical)),
  ];
  return `${parts.join('\n\n')}\n`;
};

const sectionMarkdown = (
  { title, blocks }: Section,
  mark: string,
  write: WritePhrase,
): readonly string[] => [
  `${mark} ${write(title)}`,
  ...blocks.map((block) => blockMarkdown(block, write)).filter((text) => text !== ''),
];

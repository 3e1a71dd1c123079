// Which connector was walked, and when.
import { brief, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { ReportWords, SharedWords, WrittenSpan } from '../../words/report-words.js';
import type { Report } from '../report.js';

export const aboutOf = (report: Report, { shared, owner }: ReportWords): readonly Phrase[] => {
  const { connector, title } = report.account.opened.profile.content;
  return [
    owner.connector(
      name(connector.id),
      connector.title === undefined ? null : say`${brief(connector.title)}`,
    ),
    say`${brief(title)}`,
    owner.when(spanOf(report, shared)),
  ];
};

const spanOf = ({ account, times }: Report, shared: SharedWords): WrittenSpan | null => {
  const { opened, walkEndT: endT } = account;
  const [day, lastDay] = [times.dayOf(opened.t), times.dayOf(endT)];
  const [from, to] = [times.hourOf(opened.t), times.hourOf(endT)];
  if (day === null || lastDay === null || from === null || to === null) return null;
  const [first, last] = [shared.day(day), shared.day(lastDay)];
  return {
    day: first,
    from: value(from),
    lastDay: last === first ? null : last,
    to: value(to),
    zone: times.zone === null ? null : value(times.zone),
  };
};

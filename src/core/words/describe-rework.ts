// One event of the work after the walk as one line of words.
import type { ReworkEvent } from '../event-families.js';
import type { Setting } from '../rework/decide-rework.js';
import { placeName } from '../rework/heat-limits.js';
import type { ReworkWords } from './rework-words.js';

export const describeRework = (event: ReworkEvent, words: ReworkWords): string => {
  switch (event.type) {
    case 'heat-cautions-confirmed':
      return words.confirmed;
    case 'heat-started':
      return words.heatStarted(words.place(placeName(event)), settingInWords(event, words));
    case 'heat-stopped':
      return words.heatStopped(
        words.place(placeName(event)),
        words.seconds(event.seconds),
        event.ended === 'lost',
      );
    case 'heat-limit-met':
      return words.limitMet(event, event.of ?? words.place(placeName(event)));
    case 'rework-logged': {
      const heat = event.seconds === undefined ? [] : [words.seconds(event.seconds)];
      const setting = [settingInWords(event, words), ...heat].filter((text) => text !== '');
      return words.logged(
        event.action,
        words.place(placeName(event)),
        setting.join(', '),
        event.note ?? '',
      );
    }
    case 'power-checked':
      return words.powerChecked(event);
    case 'function-tested':
      return words.functionTested(event);
    case 'job-closed':
      return words.jobClosed(event.as, event.reason ?? '');
  }
};

const settingInWords = (
  { tool, setPoint, airflow }: Setting,
  words: Pick<ReworkWords, 'tool' | 'setPoint' | 'airflow'>,
): string =>
  [
    ...(tool === undefined ? [] : [words.tool[tool]]),
    ...(setPoint === undefined ? [] : [words.setPoint(setPoint)]),
    ...(airflow === undefined ? [] : [words.airflow(airflow)]),
  ].join(', ');

// Writes a saved session's readings and marks to stdout as a reading log, and says on stderr what a log leaves out.
import { cleanText } from '../core/clean-text.js';
import type { EventOf } from '../core/events.js';
import {
  type LogLines,
  logLines,
  type PressedAt,
  pressLogLines,
} from '../core/replay/log-lines.js';
import { english } from '../core/words/english.js';
import type { LogAccuracy } from '../core/words/replay-words.js';
import { readSession } from '../store/journal-reader.js';
import { openingOf } from './named-session.js';
import { complain, sayMany } from './say.js';
import { exitCodes, UserError } from './user-error.js';

const longestId = 80;

/**
 * @param pressed null for the walk, or the place whose press tests are wanted.
 * @throws UserError when there is nothing to write.
 */
export const writeReadingLog = (file: string, pressed: PressedAt | null): void => {
  const words = english.replay;
  const events = readSession(file, { verifyChain: false });
  const opened = openingOf(events.next().value, file);
  const log: LogLines = pressed === null ? logLines(opened) : pressLogLines(pressed);
  const out = sayMany();
  for (const event of events) {
    log.take(event).forEach(out.line);
  }
  out.end();
  const profile = cleanText(opened.profile.id, longestId);
  if (pressed !== null) {
    const { line, part } = pressed;
    if (log.notInLog.pressTests === 0) {
      throw new UserError(words.noPressTest(line, part), exitCodes.usage);
    }
    complain(words.rerunPressLog(profile, line, part));
    return;
  }
  for (const says of words.notInLog(log.notInLog)) complain(says);
  complain(words.rerunLog(profile, accuracyOf(opened)));
};

const accuracyOf = ({ accuracy, driver }: EventOf<'session-opened'>): LogAccuracy => {
  const { from, rows, fullScaleCounts } = accuracy;
  const [row] = rows;
  if (from === 'option' && row !== undefined) {
    return { percent: row.percent, counts: row.counts, fullScaleCounts };
  }
  return driver === null ? null : { driver: cleanText(driver.id, longestId) };
};

// The rework desk in lines: typed or piped, the same acts as the keys of the screen.
import { createInterface } from 'node:readline';
import { cleanText } from '../core/clean-text.js';
import { firstPlace, firstSetting } from '../core/rework/begin-desk.js';
import type { Setting } from '../core/rework/decide-rework.js';
import { heatedAreas, type Place } from '../core/rework/heat-limits.js';
import { parseDeskLine } from '../core/rework/parse-desk-line.js';
import { heatCautions } from '../core/rework/rework-events.js';
import { english as words } from '../core/words/english.js';
import { onEndSignals } from '../session/end-signals.js';
import type { ReworkDesk } from '../session/rework-desk.js';
import type { LaterWork } from '../store/later-work.js';
import { complain, sayLine } from './say.js';

export const reworkInLines = async (
  desk: ReworkDesk,
  record: LaterWork,
  tells: boolean,
): Promise<void> => {
  const profile = desk.opened.profile.content;
  let place = firstPlace(record.before, desk.state, profile);
  let setting = firstSetting(desk.state);
  const say = (text: string): void => {
    if (tells) sayLine(text);
  };
  for (const caution of [
    ...heatCautions.map((id) => words.rework.caution[id]),
    ...(profile.cautions ?? []),
  ]) {
    say(cleanText(caution, 300));
  }
  say(words.rework.lines.hint);
  const act = (asked: Parameters<ReworkDesk['act']>[0]): void => {
    const refused = desk.act(asked);
    if (refused !== null) complain(words.rework.refused[refused]);
  };
  const lines = createInterface({ input: process.stdin });
  const stop = (): void => lines.close();
  const stopListening = onEndSignals(stop);
  for await (const text of lines) {
    if (text.trim() === '') continue;
    const said = parseDeskLine(text, profile);
    if (said === null) {
      complain(words.rework.lines.unknown(cleanText(text, 80)));
      complain(words.rework.lines.hint);
      continue;
    }
    if (said.line === 'quit') break;
    switch (said.line) {
      case 'confirm':
        act({ kind: 'confirm' });
        break;
      case 'heat':
        place = said.place ?? place;
        warnOfSetting(desk, place, setting);
        act({ kind: 'heat-on', place, setting });
        break;
      case 'stop':
        act({ kind: 'heat-off', action: 'reflow' });
        break;
      case 'place':
        place = said.place;
        break;
      case 'tool':
        setting = { ...setting, tool: said.tool };
        break;
      case 'set-point':
        setting = { ...setting, setPoint: said.number };
        break;
      case 'airflow':
        setting = { ...setting, airflow: said.number };
        break;
      case 'done':
        act({ kind: 'log', entry: { action: said.action, ...(said.place ?? place) } });
        break;
      case 'note':
        act({ kind: 'log', entry: { action: 'inspect', ...place, note: said.text } });
        break;
    }
  }
  lines.close();
  stopListening();
  if (desk.state.heat !== null) act({ kind: 'heat-off', action: 'reflow' });
};

/** A set-point over what the place's areas allow is noted all the same. */
export const warnOfSetting = (desk: ReworkDesk, place: Place, { setPoint }: Setting): void => {
  if (setPoint === undefined) return;
  const allowed = heatedAreas(desk.opened.profile.content, desk.limits, place).flatMap(
    ({ limits }) => limits.setPoint ?? [],
  );
  const least = Math.min(...allowed);
  if (setPoint <= least) return;
  const { rework: says } = words;
  complain(says.setPointOver(says.setPoint(setPoint), says.setPoint(least)));
};

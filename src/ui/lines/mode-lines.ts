// What a change of mode says in lines: prompts, the chosen finding, the page of keys. What is typed is echoed
// elsewhere, character by character.
import { selectFindings } from '../../core/select/findings.js';
import type { WalkState } from '../../core/walk/state.js';
import { chainInWords } from '../../core/words/describe-suspects.js';
import { replayActs } from '../../core/words/replay-words.js';
import { screenActs } from '../../core/words/screen-words.js';
import { shownValue } from '../../core/words/shown.js';
import type { Words } from '../../core/words/words.js';
import { type KeyMap, shownKey } from '../keys/key-map.js';
import { replayKeys } from '../keys/replay-keys.js';
import type { Mode } from '../mode.js';

export const modeLines = (
  before: Mode,
  now: Mode,
  state: WalkState,
  words: Words,
  keys: KeyMap,
  isReplay = false,
): readonly string[] => {
  if (before === now) return [];
  const { screen } = words;
  switch (now.mode) {
    case 'walk':
      return [];
    case 'keys':
      return [
        ...(isReplay ? replayKeyLines(words, keys) : walkKeyLines(words, keys)),
        screen.anyKeyBack,
      ];
    case 'leaving':
      return before.mode === 'leaving' ? [] : [screen.quitAsk(shownKey(keys, 'quit') ?? '')];
    case 'review':
      return reviewLines(before, now.choice, state, words);
    case 'go-to':
      if (before.mode !== 'go-to') {
        return [screen.reader.prompt(isReplay ? words.replay.goTo : screen.goTo)];
      }
      if (now.wrong === null) return [];
      return [isReplay ? words.replay.noGoal(now.wrong) : screen.noPin(now.wrong)];
    case 'note':
      if (before.mode === 'note') return [];
      return [screen.reader.prompt(now.pin === null ? screen.note : screen.noteAt(now.pin))];
  }
};

const walkKeyLines = ({ screen }: Words, keys: KeyMap): readonly string[] =>
  screenActs.map((act) => `${keys[act].join(', ')}: ${screen.keyMeans[act]}`);

const replayKeyLines = ({ replay }: Words, keys: KeyMap): readonly string[] => {
  const map = replayKeys(keys);
  return replayActs.map((act) => `${map[act].join(', ')}: ${replay.keyMeans[act]}`);
};

const reviewLines = (
  before: Mode,
  choice: number,
  state: WalkState,
  words: Words,
): readonly string[] => {
  const { screen } = words;
  const findings = selectFindings(state);
  const heading = `${screen.title.review}: ${findings.length}`;
  const entering = before.mode === 'review' ? [] : [heading];
  const found = findings[Math.min(choice, findings.length - 1)];
  if (found === undefined) return [...entering, screen.allNormal];
  const { pin, line, verdict } = found;
  const value = verdict === 'unread' ? '' : ` ${shownValue(state, pin, words)}`;
  const entry = `${pin} ${line}${value}, ${words.verdict[verdict]}`;
  const chain = chainInWords(state, found.index, words);
  return [
    ...entering,
    screen.reader.chosen(choice + 1, findings.length, entry),
    ...(chain === null ? [] : [chain]),
  ];
};

/** What has been typed since: more text, or all that is left of it after some was taken away. */
export const typedSince = (
  before: Mode,
  now: Mode,
): { readonly more: string } | { readonly left: string } | null => {
  if (!('text' in before && 'text' in now) || before.mode !== now.mode) return null;
  if (now.text === before.text || (now.mode === 'go-to' && now.wrong !== null)) return null;
  return now.text.startsWith(before.text)
    ? { more: now.text.slice(before.text.length) }
    : { left: now.text };
};

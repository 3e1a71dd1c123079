// The walk for a screen reader: every change is a line, nothing is ever drawn over, the keys are the same.

import { describe } from '../../core/words/describe.js';
import type { Words } from '../../core/words/words.js';
import type { Notices } from '../../session/notices.js';
import { plainLetters } from '../draw/plain-letters.js';
import type { KeyMap } from '../keys/key-map.js';
import { type KeyInput, listenToKeys } from '../keys/keyboard.js';
import type { Key } from '../keys/parse-keys.js';
import type { ScreenSession } from '../live/screen-store.js';
import { type Mode, pressKey, walkMode } from '../mode.js';
import { pressReplayKey } from '../replay-mode.js';
import { modeLines, typedSince } from './mode-lines.js';
import { placeLine } from './place-line.js';
import { playedLine } from './played-line.js';

export interface LinesParts {
  readonly session: ScreenSession;
  readonly words: Words;
  readonly keys: KeyMap;
  readonly simulated: boolean;
  readonly unicode: boolean;
  readonly repeat: () => void;
  readonly notices: Pick<Notices, 'follow'>;
  readonly stdin: KeyInput;
  readonly write: (text: string) => void;
}

export const runLines = async (parts: LinesParts): Promise<void> => {
  const { session, words, keys } = parts;
  const { replay } = session;
  const shown = (text: string): string => (parts.unicode ? text : plainLetters(text));
  /** What is being typed stands on a line of its own, which the next thing said must not run into. */
  let typing = false;
  const say = (line: string): void => {
    parts.write(`${typing ? '\n' : ''}${shown(line)}\n`);
    typing = false;
  };
  const echo = (text: string): void => {
    parts.write(shown(text));
    typing = true;
  };
  let mode: Mode = walkMode;
  let trouble = session.trouble;
  let { stage } = session.state;

  const change = (next: Mode): void => {
    for (const line of modeLines(mode, next, session.state, words, keys, replay !== undefined)) {
      say(line);
    }
    const typed = typedSince(mode, next);
    if (typed !== null && 'more' in typed) echo(typed.more);
    else if (typed !== null) {
      if (typing) say('');
      echo(typed.left);
    }
    mode = next;
  };
  const press = (key: Key): void => {
    const step =
      replay === undefined
        ? { ...pressKey(mode, key, session.state, keys), control: null }
        : pressReplayKey(mode, key, session.state, keys);
    const acted = step.acts.length > 0 || step.repeat === true || step.control !== null;
    if (mode.mode !== 'walk' && step.mode.mode === 'walk' && !acted) say(words.screen.reader.left);
    change(step.mode);
    for (const act of step.acts) session.act(act);
    if (step.control !== null && replay !== undefined) {
      replay.apply(step.control);
      say(playedLine(replay.view, words));
    }
    if (step.repeat !== true) return;
    say(placeLine(session.state, words));
    parts.repeat();
  };

  session.follow((event) => {
    const line = describe(event, session.state, words);
    if (line !== null) say(line);
  });
  parts.notices.follow(say);
  const unwatch = session.onChange(() => {
    if (session.trouble !== trouble) {
      trouble = session.trouble;
      say(words.file(trouble === null ? 'writable' : 'blocked', trouble ?? ''));
    }
    const now = session.state.stage;
    const finishes =
      session.state.alone === null &&
      now === 'finished' &&
      stage === 'walking' &&
      mode.mode === 'walk';
    stage = now;
    if (finishes) change({ mode: 'review', choice: 0 });
  });

  if (parts.simulated) say(words.simulated);
  say(placeLine(session.state, words));
  const stopKeys = listenToKeys(parts.stdin, press);
  try {
    await session.ended;
  } finally {
    unwatch();
    stopKeys();
  }
};

// One line of words: the last thing said, or what is being typed.
import type { ReactElement } from 'react';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span } from '../draw/line.js';
import { shownKey } from '../keys/key-map.js';
import type { Snapshot } from '../live/screen-store.js';
import { Row } from './rows.js';

export const Said = ({
  snapshot: { mode, said, replay },
  width,
}: {
  readonly snapshot: Snapshot;
  readonly width: number;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const { screen } = words;
  const typed = (label: string, text: string, hint: Line): Line => [
    ...chip(label, theme.style.notice, theme),
    span(` ${text}`, theme.style.strong),
    span(theme.line.cursor, theme.style.accent),
    ...hint,
  ];
  const howTo: Line = [span(`  ${screen.promptKeys}`, theme.style.quiet)];
  switch (mode.mode) {
    case 'leaving': {
      const quit = shownKey(keys, 'quit') ?? '';
      return <Row width={width} line={chip(screen.quitAsk(quit), theme.style.alarm, theme)} />;
    }
    case 'go-to': {
      const { wrong, text } = mode;
      const no = replay === null ? screen.noPin : words.replay.noGoal;
      const hint = wrong === null ? howTo : [span(`  ${no(wrong)}`, theme.style.accent)];
      const label = replay === null ? screen.goTo : words.replay.goTo;
      return <Row width={width} line={typed(label, text, hint)} />;
    }
    case 'note': {
      const label = mode.pin === null ? screen.note : screen.noteAt(mode.pin);
      return <Row width={width} line={typed(label, mode.text, howTo)} />;
    }
    case 'walk':
    case 'review':
    case 'keys': {
      if (said === null) return <Row width={width} line={[]} />;
      const line = said.urgent
        ? chip(said.text, theme.style.notice, theme)
        : [span(` ${said.text}`, theme.style.quiet)];
      return <Row width={width} line={line} />;
    }
  }
};

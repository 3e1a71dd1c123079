// One line of words: the last thing said, or what is being typed.
import type { ReactElement } from 'react';
import { useSurroundings } from '../context.js';
import { type Line, span } from '../draw/line.js';
import { shownKey } from '../keys/key-map.js';
import type { Mode } from '../mode.js';
import { Row } from './rows.js';

export const Said = ({
  mode,
  said,
}: {
  readonly mode: Mode;
  readonly said: string | null;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const { screen } = words;
  const typed = (label: string, text: string): Line => [
    span(` ${label} `, theme.style.notice),
    span(` ${text}`, theme.style.strong),
    span(' ', { inverse: true }),
    span(`  ${screen.promptKeys}`, theme.style.quiet),
  ];
  switch (mode.mode) {
    case 'leaving':
      return (
        <Row
          line={[span(` ${screen.quitAsk(shownKey(keys, 'quit') ?? '')} `, theme.style.alarm)]}
        />
      );
    case 'go-to':
      return (
        <Row
          line={[
            ...typed(screen.goTo, mode.text),
            ...(mode.wrong === null
              ? []
              : [span(`  ${screen.noPin(mode.wrong)}`, theme.verdict.open)]),
          ]}
        />
      );
    case 'note':
      return (
        <Row line={typed(mode.pin === null ? screen.note : screen.noteAt(mode.pin), mode.text)} />
      );
    case 'walk':
    case 'review':
    case 'keys':
      return <Row line={[span(` ${said ?? ''}`, theme.style.quiet)]} />;
  }
};

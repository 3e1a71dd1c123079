// Draws one part of the screen, or all of it, and gives its rows as text.
import { stripVTControlCharacters } from 'node:util';
import { render } from 'ink-testing-library';
import type { ReactElement } from 'react';
import { english } from '../../../src/core/words/english.js';
import { type Surroundings, SurroundingsContext } from '../../../src/ui/context.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { createTheme } from '../../../src/ui/theme.js';
import { demoProfile } from './bench-session.js';

export const surroundings: Surroundings = {
  words: english,
  theme: createTheme({ colours: 'none', background: 'dark', unicode: true }),
  keys: keyMapWith({}),
  profile: demoProfile,
  simulated: true,
};

/** With its styles. */
export const showStyled = (part: ReactElement, given: Partial<Surroundings> = {}): string => {
  const { lastFrame, unmount } = render(
    <SurroundingsContext.Provider value={{ ...surroundings, ...given }}>
      {part}
    </SurroundingsContext.Provider>,
  );
  const frame = lastFrame() ?? '';
  unmount();
  return frame;
};

export const show = (part: ReactElement, given: Partial<Surroundings> = {}): readonly string[] =>
  stripVTControlCharacters(showStyled(part, given)).split('\n');

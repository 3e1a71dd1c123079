import { EventEmitter } from 'node:events';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { english } from '../../../src/core/words/english.js';
import { createNotices, type Notices } from '../../../src/session/notices.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { runLines } from '../../../src/ui/lines/run-lines.js';
import { type SteppedBench, steppedBench } from '../support/bench-session.js';

class FakeInput extends EventEmitter {
  resume(): void {}
  pause(): void {}
}

interface Reader {
  readonly bench: SteppedBench;
  readonly text: () => string;
  readonly type: (text: string) => void;
  readonly notices: Notices;
}

const read = (scenario: 'healthy' | 'demo' = 'healthy', unicode = true): Reader => {
  const bench = steppedBench({ scenario });
  const stdin = new FakeInput();
  const notices = createNotices();
  let written = '';
  void runLines({
    session: bench.session,
    words: english,
    keys: keyMapWith({}),
    simulated: true,
    unicode,
    repeat: () => undefined,
    notices,
    stdin,
    write: (text) => {
      written += text;
    },
  });
  return { bench, text: () => written, type: (text) => void stdin.emit('data', text), notices };
};

describe('lines for a screen reader', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('should say every change as a line, without any control character', () => {
    const { bench, text } = read();
    bench.until(({ cursor }) => cursor === 3);
    expect(text()).toContain('Readings are simulated');
    expect(text()).toContain('Ground is good.\n');
    expect(text()).toMatch(/2 LANE0_P: \d+\.\d Ω, normal/u);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: their absence is what is meant
    expect(text()).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/u);
  });

  it('should ask in words, and take the answer from the same keys', () => {
    const { bench, text, type } = read('demo');
    bench.until(({ question }) => question?.question === 'open');
    expect(text()).toContain('5: open? Answer "open"');
    type('o');
    expect(text()).toMatch(/5 LANE1_P: overload, open/u);
  });

  it('should say a notice as a line', () => {
    const { text, notices } = read();
    notices.say('no player works here: the bell is rung instead');
    expect(text()).toContain('\nno player works here: the bell is rung instead\n');
  });

  it('should echo what is typed character by character', () => {
    const { bench, text, type } = read();
    bench.until(({ cursor }) => cursor === 2);
    const before = text().length;
    type('w');
    type('du');
    type('\u007f');
    type('ull');
    type('\r');
    const said = text().slice(before);
    expect(said).toBe(
      'Note at pin 3: type it, then press enter; escape leaves it\ndu\n\ndull\nnote at 3: dull\n',
    );
  });

  it('should say where it stands on request', () => {
    const { bench, text, type } = read();
    bench.until(({ cursor, contact }) => cursor === 2 && contact.rest !== null);
    type('c');
    expect(text()).toMatch(
      /Pin 2, LANE0_P, reads \d+\.\d+ Ω, normal, 349\.2 Ω to 426\.8 Ω expected\n$/u,
    );
  });

  it('should go through the findings one by one', () => {
    const { bench, text, type } = read('demo');
    expect(bench.until(({ stage }) => stage === 'finished')).toBe(true);
    expect(text()).toMatch(/Not normal: (\d)\n1 of \1: /u);
    type('\u001b[B');
    expect(text()).toMatch(/2 of \d: [^\n]+\nAlong \w+: J7 pin \d+ \d+ %, [^\n]+\n$/u);
  });

  it('should ask before it leaves', () => {
    const { bench, text, type } = read();
    bench.until(({ cursor }) => cursor === 1);
    type('q');
    expect(text()).toMatch(/again leaves, any other key stays\.\n$/u);
    type('x');
    expect(text()).toMatch(/Left\.\n$/u);
    expect(bench.session.state.stage).toBe('walking');
  });

  it('should say the units in ASCII where there is no more', () => {
    const { bench, text } = read('healthy', false);
    bench.until(({ cursor }) => cursor === 3);
    expect(text()).toContain('ohm');
    expect(text()).not.toContain('Ω');
  });
});

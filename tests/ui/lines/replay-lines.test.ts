// A played session for a screen reader.
import { EventEmitter } from 'node:events';
import { describe, expect, it } from 'vitest';
import { english } from '../../../src/core/words/english.js';
import { createNotices } from '../../../src/session/notices.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { runLines } from '../../../src/ui/lines/run-lines.js';
import { playedSession } from '../support/played-session.js';

class FakeInput extends EventEmitter {
  resume(): void {}
  pause(): void {}
}

const read = () => {
  const { clock, session } = playedSession();
  const stdin = new FakeInput();
  let written = '';
  void runLines({
    session,
    words: english,
    keys: keyMapWith({}),
    simulated: true,
    unicode: true,
    repeat: () => undefined,
    notices: createNotices(),
    stdin,
    write: (text) => {
      written += text;
    },
  });
  session.start();
  const since = (act: () => void): string => {
    const before = written.length;
    act();
    return written.slice(before);
  };
  return { clock, session, since, type: (text: string) => void stdin.emit('data', text) };
};

describe('a replay in lines', () => {
  it('should say what was said, as it is played', () => {
    const { clock, since } = read();
    expect(since(() => clock.run(12))).toContain('Ground is good.');
  });

  it('should answer each key with where it stands', () => {
    const { since, type, session } = read();
    expect(since(() => type(' '))).toMatch(/\d:\d\d\/\d:\d\d, paused/u);
    expect(since(() => type('n'))).toContain('open?');
    expect(session.replay.view.at).toBe(session.replay.recording.waymarks[0]?.to);
    expect(since(() => type('\u001b[C'))).toMatch(/\d:\d\d\/\d:\d\d, paused/u);
  });

  it('should list the keys of a replay, and ask for a time or a pin', () => {
    const { since, type } = read();
    const keys = since(() => type('?'));
    expect(keys).toContain('to the next find');
    expect(keys).not.toContain('the line at this pin is open');
    type('x');
    expect(since(() => type('g'))).toContain('Go to time or pin');
    expect(since(() => type('zz\r'))).toContain('is no time');
    expect(since(() => type('0:30\r'))).toContain('0:30/');
  });
});

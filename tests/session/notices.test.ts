import { describe, expect, it } from 'vitest';
import { createNotices } from '../../src/session/notices.js';

describe('notices', () => {
  it('should reach whoever listens, and whoever comes later', () => {
    const notices = createNotices();
    const first: string[] = [];
    const second: string[] = [];
    notices.follow((text) => void first.push(text));
    notices.say('one');
    notices.follow((text) => void second.push(text));
    notices.say('two');
    expect(first).toEqual(['one', 'two']);
    expect(second).toEqual(['one', 'two']);
    expect(notices.said).toEqual(['one', 'two']);
  });
});

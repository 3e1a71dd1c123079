import { EventEmitter } from 'node:events';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type KeyInput, listenToKeys } from '../../../src/ui/keys/keyboard.js';

class FakeInput extends EventEmitter implements KeyInput {
  readonly isTTY = true;
  raw: boolean | null = null;
  paused = true;
  setRawMode(on: boolean): void {
    this.raw = on;
  }
  resume(): void {
    this.paused = false;
  }
  pause(): void {
    this.paused = true;
  }
}

describe('keyboard', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('should listen in raw mode and leave it', () => {
    const input = new FakeInput();
    const stop = listenToKeys(input, () => undefined);
    expect([input.raw, input.paused]).toEqual([true, false]);
    stop();
    expect([input.raw, input.paused, input.listenerCount('data')]).toEqual([false, true, 0]);
  });

  it('should tell a lone escape from the beginning of a sequence', () => {
    const input = new FakeInput();
    const keys: string[] = [];
    listenToKeys(input, ({ name }) => keys.push(name));
    input.emit('data', Buffer.from('\u001b'));
    expect(keys).toEqual([]);
    vi.advanceTimersByTime(30);
    input.emit('data', Buffer.from('[15~'));
    expect(keys).toEqual(['f5']);
    input.emit('data', Buffer.from('\u001b'));
    vi.advanceTimersByTime(100);
    expect(keys).toEqual(['f5', 'escape']);
  });

  it('should put a character cut in its bytes together', () => {
    const input = new FakeInput();
    const keys: string[] = [];
    listenToKeys(input, ({ name }) => keys.push(name));
    const bytes = Buffer.from('ü');
    input.emit('data', bytes.subarray(0, 1));
    input.emit('data', bytes.subarray(1));
    expect(keys).toEqual(['ü']);
  });

  it('should wait for the end of a paste as long as it takes', () => {
    const input = new FakeInput();
    const keys: string[] = [];
    listenToKeys(input, ({ name, text }) => keys.push(`${name}:${text}`));
    input.emit('data', '\u001b[200~long ');
    vi.advanceTimersByTime(1000);
    expect(keys).toEqual([]);
    input.emit('data', 'text\u001b[201~');
    expect(keys).toEqual(['paste:long text']);
  });
});

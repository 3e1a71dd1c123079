// Both ends of a terminal without one: what is written is kept, keys are sent by hand.
import { EventEmitter } from 'node:events';

class FakeInput extends EventEmitter {
  readonly isTTY = true;
  raw = false;
  setRawMode(on: boolean): void {
    this.raw = on;
  }
  resume(): void {}
  pause(): void {}
}

class FakeOutput extends EventEmitter {
  readonly isTTY = true;
  readonly columns = 80;
  readonly rows = 24;
  written = '';
  write(text: string): boolean {
    this.written += text;
    return true;
  }
  getColorDepth(): number {
    return 24;
  }
}

export interface FakeTerminal {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  written(): string;
  isRaw(): boolean;
  send(text: string): void;
  /** The terminal goes away, as one of its ends shows. */
  vanish(end: 'stdin' | 'stdout'): void;
}

export const fakeTerminal = (): FakeTerminal => {
  const stdin = new FakeInput();
  const stdout = new FakeOutput();
  return {
    stdin: stdin as unknown as NodeJS.ReadStream,
    stdout: stdout as unknown as NodeJS.WriteStream,
    written: () => stdout.written,
    isRaw: () => stdin.raw,
    send: (text) => void stdin.emit('data', text),
    vanish: (end) => void { stdin, stdout }[end].emit('error', new Error('EIO')),
  };
};

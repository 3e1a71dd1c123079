// Listens to the terminal's own bytes, so that function keys and pedals are told apart. Raw mode is on while it
// listens and off afterwards; a lone escape is told from the beginning of a sequence by waiting a moment.
import { StringDecoder } from 'node:string_decoder';
import { type Key, parseKeys } from './parse-keys.js';

export interface KeyInput {
  readonly isTTY?: boolean;
  setRawMode?(on: boolean): unknown;
  on(event: 'data', call: (chunk: Buffer | string) => void): unknown;
  off(event: 'data', call: (chunk: Buffer | string) => void): unknown;
  resume(): unknown;
  pause(): unknown;
}

const escapeWaitMs = 60;

/** Calls `take` for every key until the returned function is called. */
export const listenToKeys = (input: KeyInput, take: (key: Key) => void): (() => void) => {
  const decoder = new StringDecoder('utf8');
  let rest = '';
  let timer: NodeJS.Timeout | undefined;

  const feed = (text: string, ended: boolean): void => {
    const parsed = parseKeys(text, ended);
    rest = parsed.rest;
    for (const key of parsed.keys) take(key);
    if (rest !== '' && !ended) timer = setTimeout(() => feed(rest, true), escapeWaitMs);
  };
  const data = (chunk: Buffer | string): void => {
    clearTimeout(timer);
    feed(rest + (typeof chunk === 'string' ? chunk : decoder.write(chunk)), false);
  };

  if (input.isTTY === true) input.setRawMode?.(true);
  input.on('data', data);
  input.resume();
  return () => {
    clearTimeout(timer);
    input.off('data', data);
    if (input.isTTY === true) input.setRawMode?.(false);
    input.pause();
  };
};

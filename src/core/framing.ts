// Cuts a byte stream into lines, the same way on every link: CR, LF and CRLF end a line, empty lines say
// nothing and are left out, length is capped. However the bytes are chunked, the frames are the same. Makes
// no sense of a line's content.
import { cleanText } from './clean-text.js';
import { textOf, type WireEncoding } from './meter/wire-text.js';

/** One line from the far end, already cut, capped and decoded; `overlong` where the cap was passed. */
export type Frame = { readonly text: string } | { readonly overlong: true; readonly text: string };

export interface FramerOptions {
  /** Longest line in bytes, without its end. */
  readonly maxFrame: number;
  readonly encoding: WireEncoding;
  /** True where the far end talks by itself: listening may begin in the middle of a line. */
  readonly dropFirstPartial: boolean;
  /** True where a line may begin with an IEEE 488.2 definite-length block, whose data may hold line ends. */
  readonly blocks?: boolean;
}

/** Keeps the unfinished line between chunks. Make a new one at every opening of a link. */
export interface Framer {
  push(bytes: Uint8Array): Frame[];
}

const CR = 0x0d;
const LF = 0x0a;
const overlongTextLength = 80;

/** Bytes of `#<n><len><data>` at the start of a line; null while it cannot be told, 0 when it is none. */
const blockLength = (line: Uint8Array): number | null => {
  if (line[0] !== 0x23) return 0;
  if (line.length < 2) return null;
  const digits = (line[1] ?? 0) - 0x30;
  if (digits < 1 || digits > 9) return 0;
  let length = 0;
  for (const byte of line.subarray(2, 2 + digits)) {
    if (byte < 0x30 || byte > 0x39) return 0;
    length = length * 10 + byte - 0x30;
  }
  return line.length < 2 + digits ? null : 2 + digits + length;
};

/**
 * An over-long line gives one `overlong` frame with the cleaned beginning as soon as the cap is passed, and
 * the rest of it is dropped up to the next line end. So does a block that announces more than the cap.
 * @throws RangeError when `maxFrame` is not a positive whole number.
 */
export const createFramer = (options: FramerOptions): Framer => {
  const { maxFrame, encoding } = options;
  if (!Number.isInteger(maxFrame) || maxFrame < 1) {
    throw new RangeError(`maxFrame must be a positive whole number, not ${maxFrame}`);
  }
  const line = new Uint8Array(maxFrame);
  let length = 0;
  let dropping = options.dropFirstPartial;

  const overlong = (): Frame => {
    const text = cleanText(textOf(line.subarray(0, length), encoding), overlongTextLength);
    length = 0;
    dropping = true;
    return { overlong: true, text };
  };

  const take = (byte: number): Frame | null => {
    const block = options.blocks && !dropping ? blockLength(line.subarray(0, length)) : 0;
    const counted = block !== null && length < block;
    if (counted && block > maxFrame) return overlong();
    if ((byte === CR || byte === LF) && !counted) {
      const frame = length > 0 ? { text: textOf(line.subarray(0, length), encoding) } : null;
      length = 0;
      dropping = false;
      return frame;
    }
    if (dropping) return null;
    if (length === maxFrame) return overlong();
    line[length] = byte;
    length += 1;
    return null;
  };

  return {
    push: (bytes) => {
      const frames: Frame[] = [];
      for (const byte of bytes) {
        const frame = take(byte);
        if (frame) frames.push(frame);
      }
      return frames;
    },
  };
};

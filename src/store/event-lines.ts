// Lines of a session file, one after another, as events. Each is what `decodeLine` makes of it.
import { isUtf8 } from 'node:buffer';
import { type DecodedLine, decodeLine, EventLineError } from '../core/event-line.js';
import { ReadingLines } from './reading-lines.js';

export class EventLines {
  readonly #readings = new ReadingLines();

  /**
   * Undefined for a line that is no whole object, as one cut short is.
   * @throws EventLineError for a whole one that is no sound event.
   */
  decode(bytes: Buffer, from: number, to: number, lineNumber: number): DecodedLine | undefined {
    return this.#readings.read(bytes, from, to) ?? this.#check(bytes, from, to, lineNumber);
  }

  #check(bytes: Buffer, from: number, to: number, lineNumber: number): DecodedLine | undefined {
    const text = bytes.toString('utf8', from, to);
    if (text.includes('\uFFFD') && !isUtf8(bytes.subarray(from, to))) return undefined;
    try {
      const decoded = decodeLine(text, lineNumber);
      if (decoded.known) this.#readings.learn(text, decoded);
      return decoded;
    } catch (error) {
      if (error instanceof EventLineError && !error.whole) return undefined;
      throw error;
    }
  }
}

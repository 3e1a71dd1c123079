// Reads a text file line by line without holding it whole. Splits bytes before decoding UTF-8; a line ends with
// LF or CRLF. Refuses a line longer than any this program writes.
import { open } from 'node:fs/promises';

const longestLine = 1 << 20;

/** @throws Error when the file cannot be read or holds an endless line. */
export async function* readLines(file: string): AsyncGenerator<string> {
  const handle = await open(file, 'r');
  try {
    let rest = Buffer.alloc(0);
    for await (const chunk of handle.createReadStream({ autoClose: false })) {
      rest = Buffer.concat([rest, chunk as Buffer]);
      let start = 0;
      for (let end = rest.indexOf(0x0a); end >= 0; end = rest.indexOf(0x0a, start)) {
        yield textOf(rest.subarray(start, end));
        start = end + 1;
      }
      rest = rest.subarray(start);
      if (rest.length > longestLine) throw new Error(`a line is longer than ${longestLine} bytes`);
    }
    if (rest.length > 0) yield textOf(rest);
  } finally {
    await handle.close();
  }
}

const textOf = (line: Buffer): string =>
  line.toString('utf8', 0, line.at(-1) === 0x0d ? line.length - 1 : line.length);

// Bytes to text and back, one line at a time, in the encodings meters use. Never guesses: a byte that the
// encoding does not know becomes U+FFFD, so that strict decoding refuses the line instead of misreading it.

export const wireEncodings = ['ascii', 'latin1', 'utf8'] as const;
export type WireEncoding = (typeof wireEncodings)[number];

const unknown = '\uFFFD';
const utf8 = new TextDecoder('utf-8');

/**
 * Decodes one whole line. Split bytes first and decode after: a UTF-8 character may be cut by a chunk.
 * TextDecoder is not used for the single-byte encodings, because its "latin1" is windows-1252.
 */
export const textOf = (bytes: Uint8Array, encoding: WireEncoding): string => {
  if (encoding === 'utf8') return utf8.decode(bytes);
  let text = '';
  for (const byte of bytes) {
    text += encoding === 'ascii' && byte > 0x7f ? unknown : String.fromCharCode(byte);
  }
  return text;
};

/** Encodes text to send. A character that the encoding does not have is sent as `?`. */
export const bytesOf = (text: string, encoding: WireEncoding): Uint8Array => {
  if (encoding === 'utf8') return new TextEncoder().encode(text);
  const highest = encoding === 'ascii' ? 0x7f : 0xff;
  return Uint8Array.from(
    Array.from(text, (char) => char.codePointAt(0) ?? 0),
    (code) => (code > highest ? 0x3f : code),
  );
};

// A WAV file in memory: RIFF, one `fmt ` chunk (PCM, mono, 16 bit), one `data` chunk. Refuses other shapes.

const headerBytes = 44;

/**
 * @throws RangeError unless the sample rate is a positive whole number.
 * @example wavOf(new Int16Array(220), 22050).length // 484
 */
export const wavOf = (samples: Int16Array, sampleRate: number): Uint8Array => {
  if (!Number.isInteger(sampleRate) || sampleRate <= 0) {
    throw new RangeError(`a sample rate is a positive whole number, not ${sampleRate}`);
  }
  const dataBytes = 2 * samples.length;
  const bytes = new Uint8Array(headerBytes + dataBytes);
  const view = new DataView(bytes.buffer);
  const word = (at: number, text: string): void => {
    for (let i = 0; i < text.length; i += 1) view.setUint8(at + i, text.charCodeAt(i));
  };
  word(0, 'RIFF');
  view.setUint32(4, headerBytes - 8 + dataBytes, true);
  word(8, 'WAVE');
  word(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 2 * sampleRate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  word(36, 'data');
  view.setUint32(40, dataBytes, true);
  samples.forEach((sample, i) => {
    view.setInt16(headerBytes + 2 * i, sample, true);
  });
  return bytes;
};

/** Seconds of sound in a WAV file as synthesisers write them; 0 where it is none, or holds no sound. */
export const wavSeconds = (bytes: Uint8Array): number => {
  const text = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (bytes.length <= headerBytes || text(0) !== 'RIFF' || text(8) !== 'WAVE') return 0;
  const bytesPerS = new DataView(bytes.buffer, bytes.byteOffset).getUint32(28, true);
  return bytesPerS === 0 ? 0 : (bytes.length - headerBytes) / bytesPerS;
};

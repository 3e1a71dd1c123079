// Turns a tone into sound. Every note rises and falls along a raised cosine, so that nothing clicks, and stays
// well below full scale, so that nothing startles.
import { type Note, type Tone, toneMs } from './tone.js';

/** Peak of the fundamental as a share of full scale, -14 dB: near what a voice has. */
const loudness = 0.2;
/** A second harmonic lets a small loudspeaker carry the low notes. */
const secondHarmonic = 0.2;
const edgeS = 0.006;

/**
 * 16-bit mono samples of the tone, without the last note's rest.
 * @throws RangeError unless the sample rate is positive and over twice every frequency.
 */
export const renderTone = (tone: Tone, sampleRate: number): Int16Array => {
  const highest = Math.max(0, ...tone.flatMap(({ fromHz, toHz }) => [fromHz, toHz]));
  // The second harmonic has to stay under half the sample rate.
  if (!(Number.isFinite(sampleRate) && sampleRate > 4 * highest)) {
    throw new RangeError(`a sample rate of ${sampleRate} Hz cannot carry ${highest} Hz`);
  }
  let ms = 0;
  const placed = tone.map((note) => {
    const first = Math.round((ms * sampleRate) / 1000);
    const after = Math.round(((ms + note.ms) * sampleRate) / 1000);
    ms += note.ms + note.restMs;
    return { note, first, after };
  });
  const samples = new Int16Array(Math.round((toneMs(tone) * sampleRate) / 1000));
  for (const { note, first, after } of placed) {
    for (let i = first; i < after; i += 1) {
      samples[i] = Math.round(32767 * noteAt(note, (i - first) / sampleRate));
    }
  }
  return samples;
};

/** The note's sound `t` seconds after its start, as a share of full scale. */
const noteAt = ({ fromHz, toHz, ms }: Note, t: number): number => {
  const lengthS = ms / 1000;
  const phase = 2 * Math.PI * (fromHz * t + ((toHz - fromHz) * t * t) / (2 * lengthS));
  const fromEdge = Math.min(t, lengthS - t, edgeS) / edgeS;
  const envelope = (1 - Math.cos(Math.PI * fromEdge)) / 2;
  return loudness * envelope * (Math.sin(phase) + secondHarmonic * Math.sin(2 * phase));
};

// The programs that can speak into a WAV file. They never speak directly: with no sound device they say nothing
// and still report success. A text has passed `speakable`, so it begins with a letter or digit.
import type { Command } from './process.js';

export interface Synthesiser {
  readonly title: string;
  command(text: string, wavPath: string, language: string): Command;
}

/** Words a minute: brisk, and still clear to someone who is busy. */
const pace = '190';

const espeak = (program: string): Synthesiser => ({
  title: program,
  command: (text, wavPath, language) => ({
    program,
    args: ['-v', language, '-s', pace, '-w', wavPath, '--', text],
  }),
});

export const systemSynthesisers: readonly Synthesiser[] = [
  espeak('espeak-ng'),
  espeak('espeak'),
  {
    title: 'say',
    command: (text, wavPath) => ({
      program: 'say',
      args: ['-r', pace, '-o', wavPath, '--file-format=WAVE', '--data-format=LEI16@22050', text],
    }),
  },
];

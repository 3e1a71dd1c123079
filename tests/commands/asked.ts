// A terminal for tests: answers given beforehand, everything said kept.
import type { Asking } from '../../src/commands/asking.js';

export const asked = (...answers: string[]): Asking & { readonly said: string[] } => {
  const said: string[] = [];
  return {
    said,
    ask: async (question) => {
      said.push(question);
      const answer = answers.shift();
      if (answer === undefined) throw new Error(`no answer left for ${question}`);
      return answer;
    },
    say: (line) => void said.push(line),
  };
};

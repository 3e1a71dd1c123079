// What the guided start says: a few questions, each with numbered answers.
export interface GuideWords {
  readonly cautions: readonly string[];
  readonly whichMeter: string;
  readonly virtualBench: string;
  readonly typeLink: string;
  readonly linkExample: string;
  asking(at: string): string;
  readonly nothingAnswers: string;
  readonly whichDriver: string;
  readonly whichProfile: string;
  readonly typeProfile: string;
  readonly profileExample: string;
  choose(most: number): string;
  notAChoice(given: string, most: number): string;
  sameAgain(command: string): string;
}

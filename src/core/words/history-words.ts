// What is said of a shop's history.
export interface HistoryWords {
  readonly head: readonly [string, string, string, string, string, string];
  readonly noSymptom: string;
  skipped(file: string, why: string): string;
  boards(profile: string, boards: number, explained: number): string;
  summary(sessions: number, skipped: number, simulated: number): string;
  readonly nothing: string;
  prior(place: string, faults: number, boards: number, before: number, now: number): string;
  noPriors(profile: string): string;
  unplaced(places: string): string;
  written(id: string, file: string): string;
  readonly notWritten: string;
}

// What is said while a profile is begun or grows.
export interface ProfileWords {
  readonly askTitle: string;
  readonly untitled: string;
  readonly askPins: string;
  noCount(given: string): string;
  readonly askRows: string;
  readonly askNumbering: string;
  readonly askGrounds: string;
  readonly askSupplies: string;
  readonly askNames: string;
  readonly ground: string;
  readonly supply: string;
  noPin(pin: string, of: number): string;
  taken(pin: string, kind: string): string;
  tooManyNames(names: number, pins: number): string;
  noName(given: string): string;
  begun(id: string, pins: number, file: string): string;
  next(file: string): string;
  grown(lines: number, of: number, file: string): string;
  readonly oneBoard: string;
  readonly simulated: string;
}

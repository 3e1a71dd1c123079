// What is wrong in a file someone wrote, where, and what to do about it: one line of help each.

export interface Problem {
  /** Keys and indices from the top of the JSON document. */
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly fix: string;
}

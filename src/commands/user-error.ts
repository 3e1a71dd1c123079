// An end of the program that its user brought about or must act on: one line for stderr, and the exit code.

export const exitCodes = {
  usage: 2,
  badFile: 3,
  noLink: 4,
  unwritten: 5,
} as const;

export class UserError extends Error {
  override readonly name = 'UserError';
  constructor(
    message: string,
    readonly exitCode: (typeof exitCodes)[keyof typeof exitCodes],
  ) {
    super(message);
  }
}

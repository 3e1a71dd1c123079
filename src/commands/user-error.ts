// An end of the program that its user brought about or must act on: its lines for stderr, one as a rule, and the exit
// code.

export const exitCodes = {
  usage: 2,
  badFile: 3,
  noLink: 4,
  unwritten: 5,
} as const;

export class UserError extends Error {
  override readonly name = 'UserError';
  readonly lines: readonly string[];

  constructor(
    says: string | readonly string[],
    readonly exitCode: (typeof exitCodes)[keyof typeof exitCodes],
  ) {
    const lines = typeof says === 'string' ? [says] : says;
    super(lines.join('\n'));
    this.lines = lines;
  }
}

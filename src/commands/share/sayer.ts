// One line on stdout: text, or the same as an object.
export interface SayOptions {
  readonly json?: boolean;
}

export type Say = (line: string, object: object) => void;

export const sayer =
  ({ json }: SayOptions): Say =>
  (line, object) =>
    void process.stdout.write(`${json ? JSON.stringify(object) : line}\n`);

// What the system says of a running process. Linux only, as the programs that ask are.
import { readdirSync, readFileSync } from 'node:fs';

export interface ProcessState {
  /** Memory in use, bytes. */
  readonly resident: number;
  readonly handles: number;
}

/** @throws the system's error when there is no such process. */
export const processState = (pid: number): ProcessState => {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  const kilobytes = Number(/^VmRSS:\s+(\d+) kB$/mu.exec(status)?.[1]);
  return { resident: 1024 * kilobytes, handles: readdirSync(`/proc/${pid}/fd`).length };
};

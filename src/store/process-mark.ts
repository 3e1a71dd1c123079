// Tells a process from a later one with the same number: by the boot it runs in and the moment it began. Known on
// Linux only; elsewhere nothing is said.
import { readFileSync } from 'node:fs';

/** The same for one process as long as it runs. Undefined where the platform does not tell, or there is none. */
export const processMark = (pid: number): string | undefined => {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // proc(5): field 22 is the start time; the name in field 2 may itself hold blanks and brackets.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    const [state] = fields;
    // A killed process keeps its number until its parent asks after it.
    if (state === 'Z' || state === 'X') return 'ended';
    return `${boot} ${fields[19]}`;
  } catch {
    return undefined;
  }
};

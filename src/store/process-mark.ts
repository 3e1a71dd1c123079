// Tells a process from a later one with the same number: by the boot it runs in and the moment it began. Known on
// Linux only; elsewhere nothing is said.
import { readFileSync } from 'node:fs';

/** Undefined where the platform does not tell, or no such process runs. */
export const processMark = (pid: number): string | undefined => {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // proc(5): field 22 is the start time; the name in field 2 may itself hold blanks and brackets.
    const began = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
    return began === undefined ? undefined : `${boot} ${began}`;
  } catch {
    return undefined;
  }
};

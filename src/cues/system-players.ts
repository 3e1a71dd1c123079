// The programs that can play a WAV file on the usual systems, in the order in which they are tried.
import { join } from 'node:path';
import type { Command } from './process.js';

export interface SystemPlayer {
  readonly title: string;
  command(wavPath: string): Command;
}

const plain = (title: string, ...options: readonly string[]): SystemPlayer => ({
  title,
  command: (wavPath) => ({ program: title, args: [...options, wavPath] }),
});

/** The path goes through the environment: it is never part of a script's text. */
const powerShell = (systemRoot: string): SystemPlayer => ({
  title: 'PowerShell',
  command: (wavPath) => ({
    program: join(systemRoot, 'System32', 'WindowsPowerShell', 'v1.0', 'powershell.exe'),
    args: [
      '-NoProfile',
      '-NonInteractive',
      '-Command',
      '(New-Object System.Media.SoundPlayer $env:PINWALK_SOUND).PlaySync()',
    ],
    env: { PINWALK_SOUND: wavPath },
  }),
});

/** @param systemRoot the Windows folder, where there is one. */
export const systemPlayers = (systemRoot: string | undefined): readonly SystemPlayer[] =>
  systemRoot === undefined
    ? [plain('afplay'), plain('paplay'), plain('pw-play'), plain('aplay', '-q')]
    : [powerShell(systemRoot)];

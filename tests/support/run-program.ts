// Runs the built program as its users do and hands over what it printed, line by line.
import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

export const programPath = fileURLToPath(new URL('../../dist/main.js', import.meta.url));

export interface Running {
  readonly child: ChildProcess;
  /** Everything printed on stdout so far. */
  readonly lines: readonly string[];
  /** The first line, printed already or yet to come, that fulfils the condition. */
  line(condition: (line: string) => boolean): Promise<string>;
  readonly ended: Promise<{ readonly code: number | null; readonly stderr: string }>;
}

export const startProgram = (
  args: readonly string[],
  options: { readonly input?: string; readonly env?: NodeJS.ProcessEnv } = {},
): Running => {
  const child = spawn(process.execPath, [programPath, ...args], {
    env: { ...process.env, ...options.env },
  });
  child.stdin.end(options.input ?? '');
  const lines: string[] = [];
  let stderr = '';
  child.stderr.on('data', (chunk) => {
    stderr += chunk;
  });
  const waiting = new Set<() => void>();
  createInterface({ input: child.stdout }).on('line', (line) => {
    lines.push(line);
    for (const look of waiting) look();
  });
  const ended = new Promise<{ code: number | null; stderr: string }>((resolve) => {
    child.on('close', (code) => {
      resolve({ code, stderr });
      for (const look of waiting) look();
    });
  });
  return {
    child,
    lines,
    ended,
    line: (condition) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = lines.find(condition);
          if (found === undefined && child.exitCode === null) return;
          waiting.delete(look);
          if (found !== undefined) resolve(found);
          else
            reject(
              new Error(`the program ended without that line\n${lines.join('\n')}\n${stderr}`),
            );
        };
        waiting.add(look);
        look();
      }),
  };
};

export const runProgram = async (
  args: readonly string[],
  options: { readonly input?: string; readonly env?: NodeJS.ProcessEnv } = {},
): Promise<{ code: number | null; lines: readonly string[]; stderr: string }> => {
  const running = startProgram(args, options);
  const { code, stderr } = await running.ended;
  return { code, lines: running.lines, stderr };
};

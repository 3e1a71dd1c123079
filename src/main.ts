#!/usr/bin/env node
// Wires the commands together and turns every expected failure into one line and an exit code.
import { Command, CommanderError } from 'commander';
import { takeConfiguration } from './commands/configuration.js';
import { exitCodeFor, linesFor } from './commands/failures.js';
import { complain } from './commands/say.js';
import { programVersion } from './core/version.js';

const begin = `
Where to begin:
  pinwalk walk --link virtual:demo     try it without a meter
  pinwalk ports --identify             find your meter
  pinwalk check FILE                   is this driver, profile or session sound?
Each command has --help with examples.`;

const program = new Command('pinwalk')
  .description(
    'Walk a connector pin by pin with a meter, hands-free, and find the joint that broke.',
  )
  .version(programVersion)
  .option('--config <file>', "settings to use (default: in the platform's usual place)")
  .addHelpText('after', begin)
  // `config` itself must be able to show and mend what the others would refuse.
  .hook('preAction', (_program, command) => {
    if (command.name() !== 'config') takeConfiguration(command.optsWithGlobals().config);
  })
  .exitOverride()
  .configureOutput({ outputError: () => undefined });

/** Failures are told in one place, and every help lists what can be given with any command. */
const quiet = (command: Command): Command => {
  for (const part of command.commands) quiet(part);
  return command
    .exitOverride()
    .configureOutput({ outputError: () => undefined })
    .configureHelp({ showGlobalOptions: true });
};

/** Loaded by name: most of what a command needs, no other does. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  walk: async () => (await import('./commands/walk.js')).walkCommand(),
  intake: async () => (await import('./commands/intake.js')).intakeCommand(),
  triage: async () => (await import('./commands/triage.js')).triageCommand(),
  press: async () => (await import('./commands/press.js')).pressCommand(),
  replay: async () => (await import('./commands/replay.js')).replayCommand(),
  drill: async () => (await import('./commands/drill.js')).drillCommand(),
  rerun: async () => (await import('./commands/rerun.js')).rerunCommand(),
  rework: async () => (await import('./commands/rework.js')).reworkCommand(),
  recheck: async () => (await import('./commands/recheck.js')).recheckCommand(),
  test: async () => (await import('./commands/test.js')).testCommand(),
  close: async () => (await import('./commands/close.js')).closeCommand(),
  report: async () => (await import('./commands/report.js')).reportCommand(),
  learn: async () => (await import('./commands/learn.js')).learnCommand(),
  history: async () => (await import('./commands/history.js')).historyCommand(),
  share: async () => (await import('./commands/share.js')).shareCommand(),
  keys: async () => (await import('./commands/keys.js')).keysCommand(),
  pads: async () => (await import('./commands/pads.js')).padsCommand(),
  config: async () => (await import('./commands/config.js')).configCommand(),
  ports: async () => (await import('./commands/ports.js')).portsCommand(),
  check: async () => (await import('./commands/check.js')).checkCommand(),
  bench: async () => (await import('./commands/bench.js')).benchCommand(),
  profile: async () => (await import('./commands/profile.js')).profileCommand(),
};

const named = Object.keys(commands).filter((name) => process.argv.includes(name));
for (const name of named.length === 0 ? Object.keys(commands) : named) {
  const command = await commands[name]?.();
  if (command !== undefined) program.addCommand(quiet(command));
}

// Whoever reads our lines may have seen enough, as `head` does.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  // The terminal has gone away: the screen hears it too and closes the session.
  if (error.code !== 'EIO') throw error;
});
// Diagnostics that nobody reads any more stop nothing.
process.stderr.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE' && error.code !== 'EIO') throw error;
});

try {
  if (process.argv.length <= 2) program.outputHelp();
  else await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError && error.exitCode === 0) process.exitCode = 0;
  else {
    const [first, ...rest] = linesFor(error);
    if (first !== undefined) [`pinwalk: ${first}`, ...rest].forEach(complain);
    // A signal has set it already.
    process.exitCode ??= exitCodeFor(error);
  }
}

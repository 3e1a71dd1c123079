#!/usr/bin/env node
// Wires the commands together and turns every expected failure into one line and an exit code.
import { Command, CommanderError } from 'commander';
import { benchCommand } from './commands/bench.js';
import { checkCommand } from './commands/check.js';
import { closeCommand } from './commands/close.js';
import { configCommand } from './commands/config.js';
import { takeConfiguration } from './commands/configuration.js';
import { drillCommand } from './commands/drill.js';
import { exitCodeFor, linesFor } from './commands/failures.js';
import { historyCommand } from './commands/history.js';
import { intakeCommand } from './commands/intake.js';
import { keysCommand } from './commands/keys.js';
import { learnCommand } from './commands/learn.js';
import { padsCommand } from './commands/pads.js';
import { portsCommand } from './commands/ports.js';
import { pressCommand } from './commands/press.js';
import { profileCommand } from './commands/profile.js';
import { recheckCommand } from './commands/recheck.js';
import { replayCommand } from './commands/replay.js';
import { reportCommand } from './commands/report.js';
import { rerunCommand } from './commands/rerun.js';
import { reworkCommand } from './commands/rework.js';
import { complain } from './commands/say.js';
import { shareCommand } from './commands/share.js';
import { testCommand } from './commands/test.js';
import { triageCommand } from './commands/triage.js';
import { walkCommand } from './commands/walk.js';
import { programVersion } from './core/version.js';

// React chooses its build when it is first loaded; the development build leaks measurements.
process.env.NODE_ENV ??= 'production';

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

for (const command of [
  walkCommand(),
  intakeCommand(),
  triageCommand(),
  pressCommand(),
  replayCommand(),
  drillCommand(),
  rerunCommand(),
  reworkCommand(),
  recheckCommand(),
  testCommand(),
  closeCommand(),
  reportCommand(),
  learnCommand(),
  historyCommand(),
  shareCommand(),
  keysCommand(),
  padsCommand(),
  configCommand(),
  portsCommand(),
  checkCommand(),
  benchCommand(),
  profileCommand(),
]) {
  program.addCommand(quiet(command));
}

// Whoever reads our lines may have seen enough, as `head` does.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  // The terminal has gone away: the screen hears it too and closes the session.
  if (error.code !== 'EIO') throw error;
});

try {
  if (process.argv.length <= 2) program.outputHelp();
  else await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError && error.exitCode === 0) process.exitCode = 0;
  else {
    const [first = '', ...rest] = linesFor(error);
    [`pinwalk: ${first}`, ...rest].forEach(complain);
    process.exitCode = exitCodeFor(error);
  }
}

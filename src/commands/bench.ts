// `bench`: the virtual bench as a meter for other programs, over TCP or a pseudo-terminal.
import { Command, InvalidArgumentError } from 'commander';
import { BenchNameError, parseBenchName } from '../bench/bench-name.js';
import { NoPtyError, startBenchPty } from '../bench/bench-pty.js';
import { startBenchServer } from '../bench/bench-server.js';
import { benchSetup } from '../bench/bench-setup.js';
import { scenarioNames } from '../bench/scenarios.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { onEndSignals } from '../session/end-signals.js';
import { followGrowing } from '../store/growing-session.js';
import { loadDriver, loadProfile } from '../store/load-definitions.js';
import { say } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface BenchOptions {
  readonly tcp?: number;
  readonly pty?: true | string;
  readonly profile: string;
  readonly driver: string;
  readonly continued?: boolean;
  readonly hear?: string;
  readonly json?: boolean;
}

const examples = `
Scenarios: ${scenarioNames.join(', ')}
  with options as in demo?seed=3&rate=10&counts=6000&pace=usual&speed=2

Examples:
  pinwalk bench --tcp 5025 --driver scpi-read
      then: pinwalk walk --link tcp://127.0.0.1:5025 --driver scpi-read --profile demo
  pinwalk bench --pty /tmp/bench-meter --driver stream-value-unit
      then: pinwalk walk --link serial:/tmp/bench-meter --driver stream-value-unit --profile demo
  pinwalk bench story?answers=pads --pty /tmp/bench-meter --hear my-walk.jsonl
      then: pinwalk walk --link serial:/tmp/bench-meter … --session my-walk.jsonl --press each
  pinwalk bench demo?donor=beside --pty /tmp/bench-meter
      then: pinwalk walk --link serial:/tmp/bench-meter … --donor-beside`;

export const benchCommand = (): Command =>
  new Command('bench')
    .description('serve the virtual bench as a meter, for training and tests')
    .argument('[scenario]', 'what is on the bench', 'demo')
    .option('--tcp <port>', 'as a raw socket instrument on this machine', readPort)
    .option('--pty [path]', 'as a pseudo-terminal, under this name if given')
    .option('--profile <id or file>', 'the board on the bench', 'demo')
    .option('--driver <id or file>', 'the meter it imitates', 'stream-fields-flags')
    .option('--continued', 'with --tcp: a new connection goes on with the walk before')
    .option('--hear <session>', 'the technician hears the walk that writes this session file')
    .option('--json', 'the link as one JSON object on stdout')
    .option('--plain', 'the link as a line of text (the usual form)')
    .addHelpText('after', examples)
    .action(bench);

const bench = async (name: string, options: BenchOptions): Promise<void> => {
  const { tcp, pty } = options;
  if ((tcp === undefined) === (pty === undefined)) {
    throw new UserError(english.refusals.tcpOrPty, exitCodes.usage);
  }
  const clock = createMonotonicClock();
  const { content: driver } = loadDriver(options.driver);
  const { content: profile } = loadProfile(options.profile);
  const setup = orUsage(() =>
    benchSetup({ bench: parseBenchName(name), driver, profile, hears: options.hear !== undefined }),
  );
  const served = (link: string): void => say(options.json, link, { type: 'bench-served', link });
  const serving =
    tcp === undefined
      ? await startBenchPty({
          setup,
          clock,
          at: (device) => served(`serial:${device}`),
          ...(typeof pty === 'string' ? { linkPath: pty } : {}),
        }).catch(asUserError)
      : await startBenchServer({
          setup,
          clock,
          port: tcp,
          walks: options.continued ? 'continued' : 'fresh',
        }).catch(asUserError);
  if ('port' in serving) served(`tcp://127.0.0.1:${serving.port}`);
  const stopHearing =
    options.hear === undefined
      ? () => undefined
      : followGrowing(options.hear, (event) => serving.hear(event));
  await new Promise<void>((resolve) => void onEndSignals(() => resolve()));
  stopHearing();
  await serving.close();
};

const orUsage = <T>(make: () => T): T => {
  try {
    return make();
  } catch (error) {
    if (error instanceof BenchNameError || error instanceof RangeError) {
      throw new UserError(error.message, exitCodes.usage);
    }
    throw error;
  }
};

const asUserError = (error: unknown): never => {
  if (error instanceof NoPtyError) throw new UserError(error.message, exitCodes.noLink);
  if (error instanceof Error && 'code' in error) {
    throw new UserError(english.refusals.notServed(error.message), exitCodes.noLink);
  }
  throw error;
};

const readPort = (text: string): number => {
  const port = /^\d{1,5}$/u.test(text) ? Number(text) : -1;
  if (port < 0 || port > 65535) throw new InvalidArgumentError('write a port from 0 to 65535');
  return port;
};

// `ports`: which links there are, and what answers on them.
import { Command } from 'commander';
import { english } from '../core/words/english.js';
import { type Identification, identify } from '../link/identify.js';
import { LinkNameError, parseLinkName, type SerialName, type TcpName } from '../link/link-name.js';
import { listPorts, type PortEntry } from '../link/list-ports.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { listDefinitions } from '../store/load-definitions.js';
import { complain, sayLine, sayObject } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface PortsOptions {
  readonly identify?: boolean;
  readonly link?: string;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk ports
  pinwalk ports --identify
      asks every port what answers and proposes a driver
  pinwalk ports --identify --link tcp://192.0.2.7:5025
  pinwalk ports --identify --link serial:/dev/ttyUSB0`;

export const portsCommand = (): Command =>
  new Command('ports')
    .description('list links, and find out which meter answers')
    .option('--identify', 'ask what answers, and propose a driver')
    .option('--link <name>', 'only this serial:PATH or tcp://HOST:PORT')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(ports);

const ports = async (options: PortsOptions): Promise<void> => {
  const say: Say = (line, object) => {
    if (options.json) sayObject(object);
    else line.split('\n').forEach(sayLine);
  };
  const targets = options.link === undefined ? await listed(say) : [asked(options.link)];
  if (!options.identify) return;
  const drivers = listDefinitions('driver').map(({ content }) => content);
  const clock = createMonotonicClock();
  for (const target of targets) {
    const trying = (says: string): void => complain(`trying ${says}`);
    report(target, await identify(target, drivers, { clock, trying }), say);
  }
};

type Say = (line: string, object: object) => void;

const listed = async (say: Say): Promise<readonly SerialName[]> => {
  const { ports: found, note } = await listPorts();
  if (note !== undefined) complain(note);
  if (found.length === 0) {
    complain('no serial port was found; plug the lead in, or give --link tcp://HOST:PORT');
  }
  for (const port of found) say(portLine(port), { port: port.path, ...port });
  return found.map(({ path }) => ({ kind: 'serial', path, settings: {} }));
};

const portLine = ({ path, manufacturer, serialNumber, byId }: PortEntry): string =>
  [`serial:${path}`, manufacturer, serialNumber, byId].filter((part) => part).join('  ');

const asked = (link: string): SerialName | TcpName => {
  try {
    const name = parseLinkName(link);
    if (name.kind === 'serial' || name.kind === 'tcp') return name;
  } catch (error) {
    if (!(error instanceof LinkNameError)) throw error;
    throw new UserError(error.message, exitCodes.usage);
  }
  throw new UserError(english.refusals.notAskable, exitCodes.usage);
};

const report = (
  target: SerialName | TcpName,
  { proposals, notes }: Identification,
  say: Say,
): void => {
  const at = target.kind === 'tcp' ? `${target.host}:${target.port}` : target.path;
  for (const { driver, link, evidence } of proposals) {
    say(`${at}: ${evidence}\n  pinwalk walk --link ${link} --driver ${driver} --profile …`, {
      at,
      driver,
      link,
      evidence,
    });
  }
  for (const note of notes) say(`${at}: ${note}`, { at, note });
  if (proposals.length === 0 && notes.length === 0) say(`${at}: nothing known answers`, { at });
};

// `triage`: from what the device does to the groups worth walking first, without a meter and without a session.
import { Command } from 'commander';
import type { Answer } from '../core/job/job-events.js';
import { triage } from '../core/job/triage.js';
import { askedAs, describeTriage } from '../core/words/describe-triage.js';
import { english } from '../core/words/english.js';
import { loadProfile } from '../store/load-definitions.js';
import { observeOption, requireObservation } from './intake-options.js';
import { sayLine, sayObject } from './say.js';

interface TriageOptions {
  readonly profile: string;
  readonly observe?: Readonly<Record<string, Answer>>;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk triage --profile demo
      what can be observed, and what comes in most
  pinwalk triage --profile demo --observe lamp=yes host=yes picture=no
  pinwalk triage --profile demo --observe lamp=yes picture=no --json`;

export const triageCommand = (): Command =>
  new Command('triage')
    .description('which groups of lines to walk first, and which to leave alone')
    .requiredOption('--profile <id or file>', 'the connector with its table of symptoms')
    .addOption(observeOption())
    .option('--json', 'one JSON object on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = ({ profile: named, observe = {}, json }: TriageOptions): void => {
  const { content: profile } = loadProfile(named);
  for (const name of Object.keys(observe)) requireObservation(name, profile);
  const proposed = triage(profile, observe);
  if (json) {
    sayObject({ type: 'groups-proposed', ...proposed });
    return;
  }
  const open = Object.keys(profile.observations ?? {}).filter(
    (name) => !Object.hasOwn(observe, name),
  );
  const lines = [
    ...describeTriage(proposed, profile, english.job),
    ...open.map((name) => english.job.triage.canObserve(name, askedAs(profile, name))),
  ];
  lines.forEach(sayLine);
};

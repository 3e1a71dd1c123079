// The guided start at a real terminal.
import { createInterface } from 'node:readline/promises';
import { english } from '../core/words/english.js';
import { identify } from '../link/identify.js';
import { parseLinkName } from '../link/link-name.js';
import { listPorts } from '../link/list-ports.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { listDefinitions } from '../store/load-definitions.js';
import { type Guided, guide, type Known } from './guide.js';
import { exitCodes, UserError } from './user-error.js';

export const guideAtTerminal = async (known: Known): Promise<Guided> => {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const closed = new Promise<never>((_resolve, reject) => {
    lines.once('close', () => reject(new UserError('left before the walk began', exitCodes.usage)));
  });
  const drivers = listDefinitions('driver').map(({ content }) => content);
  const profiles = listDefinitions('profile').map(({ content }) => content);
  const clock = createMonotonicClock();
  try {
    return await guide(
      known,
      {
        ask: (question) => Promise.race([lines.question(question), closed]),
        say: (line) => void process.stdout.write(`${line}\n`),
        ports: async () => (await listPorts()).ports.map(({ path }) => path),
        identify: (link) => {
          const name = parseLinkName(link);
          return name.kind === 'serial' || name.kind === 'tcp'
            ? identify(name, drivers, { clock })
            : Promise.resolve({ proposals: [], notes: [] });
        },
        drivers,
        profiles,
      },
      english.guide,
    );
  } finally {
    closed.catch(() => undefined);
    lines.close();
  }
};

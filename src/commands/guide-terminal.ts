// The guided start at a real terminal.
import { english } from '../core/words/english.js';
import { identify } from '../link/identify.js';
import { parseLinkName } from '../link/link-name.js';
import { listPorts } from '../link/list-ports.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { listDefinitions } from '../store/load-definitions.js';
import { askAtTerminal } from './asking.js';
import { type Guided, guide, type Known } from './guide.js';

export const guideAtTerminal = (known: Known): Promise<Guided> => {
  const drivers = listDefinitions('driver').map(({ content }) => content);
  const profiles = listDefinitions('profile').map(({ content }) => content);
  const clock = createMonotonicClock();
  return askAtTerminal((asking) =>
    guide(
      known,
      {
        ...asking,
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
    ),
  );
};

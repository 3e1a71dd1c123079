// A few of the kills of `npm run kill`, so that a loss is seen at once.
import { describe, expect, it } from 'vitest';
import { seeded } from '../../benchmarks/shared/random.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import { faces } from './faces.js';
import { killWalks } from './kill-walks.js';

describe('a walk that is killed', { timeout: 120_000 }, () => {
  it('should hold everything it printed and go on at the right pin, whenever it was', async () => {
    const { kills } = await killWalks({
      folder: temporaryFolder(),
      random: seeded('3'),
      kills: 5,
      faces,
      profile: 'demo',
      bench: 'demo?seed=3&pace=steady&speed=2&rate=20',
      deserved: {},
      finish: false,
    });
    expect(kills.flatMap(({ wrong }) => wrong)).toEqual([]);
    expect(kills.reduce((sum, { shown }) => sum + shown, 0)).toBeGreaterThan(10);
  });
});

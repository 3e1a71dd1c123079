// A few of the faults of `npm run faults`, so that a wrong number or a fault untold is seen at once.
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { seeded } from '../../benchmarks/shared/random.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import { instrument, throughAskedFaults, throughStreamFaults } from './bench-walk.js';
import { askedFaults, streamFaults } from './faults.js';
import { ptyPeer, tcpPeer } from './peers.js';

const named =
  (...names: readonly string[]) =>
  ({ name }: { readonly name: string }): boolean =>
    names.includes(name);

describe('a hostile wire', { timeout: 120_000 }, () => {
  it('should never make a number out of halves, nor ohms out of volts', async () => {
    const folder = temporaryFolder();
    const peer = await ptyPeer(folder);
    onTestFinished(() => peer.unplug());
    const faults = streamFaults.filter(
      named('half a line, unplugged, the other half', 'function switched by hand'),
    );
    const session = join(folder, 's.jsonl');
    const outcomes = await throughStreamFaults(peer, faults, session, seeded('1'));
    expect(outcomes).toHaveLength(2);
    for (const { name, wrong, unsaid, recoveredS } of outcomes) {
      expect({ name, wrong, unsaid }).toEqual({ name, wrong: [], unsaid: null });
      expect(recoveredS).toBeLessThan(5);
    }
  });

  it('should take no answer for that of another question', async () => {
    const peer = await tcpPeer();
    onTestFinished(() => peer.unplug());
    const faults = askedFaults.filter(
      named('every answer twice', 'every answer twice, apart', 'babble between the answers'),
    );
    const session = join(temporaryFolder(), 's.jsonl');
    const outcomes = await throughAskedFaults(peer, instrument, faults, session);
    expect(outcomes).toHaveLength(3);
    for (const { name, wrong, recoveredS } of outcomes) {
      expect({ name, wrong }).toEqual({ name, wrong: [] });
      expect(recoveredS).toBeLessThan(5);
    }
  });
});

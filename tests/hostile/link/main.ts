// `npm run faults [-- --seed 1 --only WORDS]`: a walk of the built program on wires that go wrong in every way, a
// pseudo-terminal and a socket each. Ends with 1 if any number was taken in that the meter never said, a fault was not
// told, or a recovery took more than two seconds.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { seeded } from '../../benchmarks/shared/random.js';
import { textTable } from '../../benchmarks/shared/text-table.js';
import {
  instrument,
  keyMeter,
  type Outcome,
  throughAskedFaults,
  throughStreamFaults,
} from './bench-walk.js';
import { askedFaults, streamFaults } from './faults.js';
import { ptyPeer, tcpPeer } from './peers.js';

const { values } = parseArgs({
  options: { seed: { type: 'string', default: '1' }, only: { type: 'string', default: '' } },
});
const mostS = 2;

const rows: string[][] = [['fault', 'wire', 'wrong numbers', 'recovered after']];
const tell = (wire: string, outcomes: readonly Outcome[]): void => {
  for (const { name, recoveredS, wrong, unsaid } of outcomes) {
    const late = recoveredS > mostS ? ' (late)' : '';
    const silent = unsaid === null ? '' : `, ${unsaid} was not said`;
    rows.push([name, wire, String(wrong.length), `${recoveredS.toFixed(2)} s${late}${silent}`]);
    if (wrong.length > 0 || unsaid !== null || recoveredS > mostS) process.exitCode = 1;
  }
};

const folder = mkdtempSync(join(tmpdir(), 'pinwalk-faults-'));
try {
  const wanted = <T extends { readonly name: string }>(all: readonly T[]): readonly T[] =>
    all.filter(({ name }) => name.includes(values.only));
  for (const wire of ['pseudo-terminal', 'socket'] as const) {
    const peer = wire === 'socket' ? await tcpPeer() : await ptyPeer(folder);
    const session = (name: string): string => join(folder, `${wire}-${name}.jsonl`);
    const random = seeded(values.seed);
    tell(wire, await throughStreamFaults(peer, wanted(streamFaults), session('talks'), random));
    for (const meter of [instrument, keyMeter]) {
      const { driver } = meter;
      const outcomes = await throughAskedFaults(peer, meter, wanted(askedFaults), session(driver));
      tell(`${wire}, ${driver}`, outcomes);
    }
    await peer.unplug();
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.stdout.write(`${textTable(rows)}\n`);

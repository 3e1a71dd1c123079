// `npm run kill [-- --kills 200 --seed 1 --face json|plain|screen --leave]`: live walks ended by `kill -9` at drawn
// moments, in any face; ends with 1 if anything that was shown is not in the file, or a walk does not go on at the right
// pin. With `--leave` no walk is let go on to its end.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { proportion } from '../../benchmarks/shared/proportion.js';
import { seeded } from '../../benchmarks/shared/random.js';
import { faces } from './faces.js';
import { killWalks } from './kill-walks.js';

const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    leave: { type: 'boolean', default: false },
    face: { type: 'string' },
  },
});

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const folder = mkdtempSync(join(tmpdir(), 'pinwalk-kill-'));
try {
  const { kills, finished, misread } = await killWalks({
    folder,
    random: seeded(values.seed),
    kills: Number(values.kills),
    faces: faces.filter((face) => values.face === undefined || face === values.face),
    profile: 'demo',
    bench: `demo?seed=${values.seed}&pace=steady&speed=2&rate=20`,
    deserved: { LANE1_P: 'open', TOUCH_INT: 'low' },
    finish: !values.leave,
    told: ({ walk, face, atS, shown, stored, wrong }) =>
      say(
        `walk ${walk}, ${face}, killed after ${atS.toFixed(2)} s: ${shown} shown, ${stored} stored ${wrong.join('; ')}`,
      ),
  });
  const wrong = kills.filter((kill) => kill.wrong.length > 0);
  const { high } = proportion(wrong.length, kills.length);
  say(
    `${kills.length} kills (${faces.map((face) => `${kills.filter((kill) => kill.face === face).length} ${face}`).join(', ')}), ${kills.filter(({ tornBytes }) => tornBytes > 0).length} with a torn line;`,
  );
  say(
    `${wrong.length} with anything lost or a wrong pin (95 %: at most ${(100 * high).toFixed(1)} %)`,
  );
  say(`${finished} walks finished; pins misread: ${misread.length}`);
  for (const line of misread) say(`  ${line}`);
  if (wrong.length > 0 || misread.length > 0) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

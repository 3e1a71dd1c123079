// Generates the walks of one mixture, runs the walk and the plain rule over each, and sums up.
import { bestPlain, emptyGrid, tryPlain } from './best-plain.js';
import { dumpWalk } from './dump-walk.js';
import type { Engine } from './engine.js';
import { generateWalk } from './generate-walk.js';
import type { Mixture } from './mixture.js';
import type { BenchOptions } from './options.js';
import type { Report } from './report-table.js';
import { scoreWalk, type WalkScore } from './score-walk.js';
import { byRate, tally } from './tally.js';
import type { GeneratedWalk } from './walk-truth.js';

function* walksOf(mixture: Mixture, options: BenchOptions): Generator<GeneratedWalk> {
  if (options.only !== null) {
    yield generateWalk(mixture, options.seed, options.only);
    return;
  }
  let pins = 0;
  for (let number = 0; ; number += 1) {
    if (options.walks === null ? pins >= options.pins : number >= options.walks) return;
    const walk = generateWalk(mixture, options.seed, number);
    pins += walk.pins.length;
    yield walk;
  }
}

export const runMixture = async (
  mixture: Mixture,
  options: BenchOptions,
  engine: Engine | null,
): Promise<Report> => {
  const grid = emptyGrid();
  const scores: WalkScore[] = [];
  let pins = 0;
  let walks = 0;
  for (const walk of walksOf(mixture, options)) {
    walks += 1;
    pins += walk.pins.length;
    tryPlain(grid, walk);
    if (engine === null) continue;
    const events = await engine(walk.profile, walk.inputs, { accuracy: walk.told });
    const score = scoreWalk(walk, events);
    scores.push(score);
    const failed = score.findings.some(({ fault }) => fault !== 'unsure');
    if (options.dump !== null && failed) await dumpWalk(options.dump, walk, score, events);
  }
  const best = bestPlain(grid);
  const plainRates = byRate(grid[0]?.scores ?? []);
  const walkRates = byRate(scores);
  return {
    mixture: mixture.name,
    says: mixture.says,
    seed: options.seed,
    engine: options.engine === 'program' ? 'the built program' : options.engine,
    pins,
    walks,
    walk: engine === null ? null : tally(scores),
    plain: best.tally,
    plainSetting: best.setting,
    findings: scores.flatMap(({ name, rate, findings }) =>
      findings.map((finding) => ({ ...finding, walk: name, rate })),
    ),
    rates: [...plainRates.keys()].map((rate) => {
      const plain = bestPlain(grid, rate);
      const own = walkRates.get(rate);
      return {
        rate,
        walk: own ? tally(own) : null,
        plain: plain.tally,
        plainSetting: plain.setting,
      };
    }),
  };
};

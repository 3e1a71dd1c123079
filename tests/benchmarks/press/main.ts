// The press benchmark: prints the tables and ends with 1 where the reach is missed.
// Options: --trials N a kind (2000), --imitators N a kind (500, 0 leaves them out), --seed TEXT.
import { parseArgs } from 'node:util';
import { falseAlarmRate } from '../../../src/core/press/false-alarm.js';
import { lockChance } from '../../../src/core/press/lock-chance.js';
import { paceFor } from '../../../src/core/press/pace.js';
import { runPressTrial } from './generate-press.js';
import { imitators, tryImitator } from './imitators.js';
import { pressKinds } from './press-kinds.js';
import { computedTable, rateTable, shareTable, truthTable } from './press-tables.js';
import { missedReach, type PressOutcome, scorePress } from './score-press.js';

const { values } = parseArgs({
  options: {
    trials: { type: 'string', default: '2000' },
    imitators: { type: 'string', default: '500' },
    seed: { type: 'string', default: 'press' },
  },
});

const wholeNumber = (name: 'trials' | 'imitators', least: number): number => {
  const count = Number(values[name]);
  if (Number.isInteger(count) && count >= least) return count;
  process.stderr.write(`--${name} must be a whole number from ${least}, not ${values[name]}\n`);
  process.exit(2);
};

const say = (text: string): void => void process.stdout.write(`${text}\n\n`);

const trials = wholeNumber('trials', 1);
const imitatorTrials = wholeNumber('imitators', 0);

say(
  computedTable(
    falseAlarmRate(1),
    [2.5, 5, 10, 20, 50].map((rate) => ({
      rate,
      falseAlarmRate: falseAlarmRate(lockChance(paceFor(1 / rate))),
    })),
  ),
);

const scores = pressKinds.map((kind) => {
  const outcomes: PressOutcome[] = [];
  for (let i = 0; i < trials; i += 1) {
    const { result, naive, lastsS } = runPressTrial(kind, `${values.seed}/${kind}/${i}`);
    outcomes.push({ kind, finding: result.finding, cycles: result.cycles, lastsS, naive });
  }
  return scorePress(kind, outcomes);
});
say(truthTable(scores));
say(shareTable(scores));

if (imitatorTrials > 0) {
  say(
    rateTable(
      imitators([5, 20, 50]).map((imitator) => ({
        name: imitator.name,
        falseAlarms: tryImitator(imitator, imitatorTrials, values.seed),
      })),
    ),
  );
}

const missed = missedReach(scores);
say(missed.length === 0 ? 'reach met' : `reach missed:\n${missed.join('\n')}`);
process.exitCode = missed.length === 0 ? 0 : 1;

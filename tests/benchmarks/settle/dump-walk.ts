// Writes a walk that went wrong as files for study: log, profile, truth, events, and a page of findings with
// the readings around each of them.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Input, inputTime } from '../../../src/core/inputs.js';
import { accuracyOptions } from './program-engine.js';
import { readingLog } from './reading-log.js';
import type { Finding, WalkScore } from './score-walk.js';
import type { ScoredEvent } from './scored-event.js';
import type { GeneratedWalk } from './walk-truth.js';

const around = (inputs: readonly Input[], t: number): string =>
  readingLog(inputs.filter((input) => inputTime(input) >= t - 3 && inputTime(input) <= t + 1.5));

const section = (walk: GeneratedWalk, score: WalkScore, finding: Finding): string => {
  const pin = walk.pins[finding.index];
  const first = finding === score.departure ? 'FIRST DEPARTURE  ' : '';
  const touches = walk.contacts
    .filter(
      ({ index, start, end }) =>
        index === finding.index || (start < finding.t && end > finding.t - 6),
    )
    .map((contact) => JSON.stringify(contact));
  return [
    `## ${first}${finding.fault} at pin ${pin?.pin} (${pin?.line}), t ${finding.t}: ${finding.says}`,
    `truth: ${JSON.stringify(pin)}`,
    `expected: ${JSON.stringify(walk.profile.lines[pin?.line ?? ''])}`,
    ...touches,
    '',
    around(walk.inputs, finding.t),
  ].join('\n');
};

export const dumpWalk = async (
  folder: string,
  walk: GeneratedWalk,
  score: WalkScore,
  events: readonly ScoredEvent[],
): Promise<void> => {
  await mkdir(folder, { recursive: true });
  const file = (ending: string): string => join(folder, `${walk.name}.${ending}`);
  const { pins, contacts, meter, told } = walk;
  const findings = score.findings.map((finding) => section(walk, score, finding));
  const rerun = `rerun ${walk.name}.log.jsonl --profile ${walk.name}.profile.json ${accuracyOptions(told).join(' ')} --json`;
  await Promise.all([
    writeFile(file('log.jsonl'), readingLog(walk.inputs)),
    writeFile(file('profile.json'), `${JSON.stringify(walk.profile, null, 2)}\n`),
    writeFile(
      file('truth.json'),
      `${JSON.stringify({ meter, told, pins, contacts, departure: score.departure }, null, 1)}\n`,
    ),
    writeFile(file('events.jsonl'), events.map((event) => `${JSON.stringify(event)}\n`).join('')),
    writeFile(
      file('findings.txt'),
      [rerun, `meter: ${JSON.stringify(meter)}`, '', ...findings].join('\n'),
    ),
  ]);
};

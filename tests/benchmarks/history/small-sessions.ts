// Many small sessions of one connector, as a shop gathers them: each with its header, a walk of every pin and now
// and then a press test and a closed job. Chained as real ones are.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chainStart, prevOf } from '../../../src/core/session-chain.js';
import { chainStep } from '../../../src/store/chain-step.js';

const profilePath = new URL('../../../profiles/demo.json', import.meta.url);

/** @returns bytes written. */
export const writeSmallSessions = (folder: string, count: number): number => {
  const content = JSON.parse(readFileSync(profilePath, 'utf8')) as {
    readonly connector: {
      readonly pins: readonly { readonly pin: string; readonly line: string }[];
    };
  };
  let bytes = 0;
  for (let nth = 0; nth < count; nth += 1) {
    const text = sessionText(eventsOf(nth, content));
    writeFileSync(join(folder, `${String(nth).padStart(6, '0')}.jsonl`), text);
    bytes += text.length;
  }
  return bytes;
};

const eventsOf = (nth: number, content: Parameters<typeof pinEvents>[0]): readonly object[] => [
  {
    type: 'session-opened',
    ...{ format: 'pinwalk-session/1', program: '0.1.0', zone: 'UTC', link: 'stdin:' },
    wallTime: new Date(Date.UTC(2026, 0, 1) + nth * 60_000).toISOString(),
    simulated: false,
    profile: { id: 'demo', sha256: '0'.repeat(64), content },
    driver: null,
    measure: { function: 'resistance', polarity: 'red-walks' },
    accuracy: {
      ...{ from: 'assumed', fullScaleCounts: 6000 },
      rows: [{ fullScale: null, resolution: null, percent: 0.5, counts: 3 }],
    },
    groundCheck: false,
  },
  ...pinEvents(content),
  ...(nth % 3 === 0 ? [pressed] : []),
  { type: 'walk-finished', tally: { normal: 39, open: 1 } },
  ...(nth % 5 === 0
    ? [{ type: 'job-closed', as: 'repaired', cause: nth % 2 ? 'FL1' : 'FL2' }]
    : []),
  { type: 'session-closed', reason: 'finished' },
];

const pinEvents = ({
  connector,
}: {
  readonly connector: { readonly pins: readonly { readonly pin: string; readonly line: string }[] };
}): readonly object[] =>
  connector.pins.flatMap(({ pin, line }) => [
    { type: 'reading-taken', function: 'resistance', value: 388.2, range: 600, resolution: 0.1 },
    { type: 'reading-taken', function: 'resistance', value: 388.1, range: 600, resolution: 0.1 },
    {
      ...{ type: 'pin-judged', pin, line, verdict: 'normal', confidence: 0.999 },
      ...{ expected: { nominal: 388, low: 349.2, high: 426.8 }, agreed: true },
    },
  ]);

const pressed = {
  ...{ type: 'press-judged', line: 'LANE1_P', part: 'FL2', finding: 'loose', cycles: 4 },
  ...{
    pValue: 0.0143,
    adjustedPValue: 0.0275,
    answered: 4,
    pressedValue: 381,
    releasedValue: null,
  },
};

const sessionText = (events: readonly object[]): string => {
  let chain = chainStart;
  let text = '';
  events.forEach((event, seq) => {
    const line = JSON.stringify({ seq, t: seq, ...event, prev: prevOf(chain) });
    chain = chainStep(chain, Buffer.from(line));
    text += `${line}\n`;
  });
  return text;
};

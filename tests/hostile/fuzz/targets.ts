// What is fuzzed, and what must hold of it whatever comes: no crash, no hang, no number that is none, and for bad
// input a line that can be read, with a place in the file and a remedy.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { configKind } from '../../../src/core/config/config-format.js';
import {
  type DefinitionKind,
  type DefinitionRead,
  readDefinition,
} from '../../../src/core/definition/read-definition.js';
import { encodeEvent } from '../../../src/core/event-line.js';
import type { WalkEvent } from '../../../src/core/events.js';
import { createFramer } from '../../../src/core/framing.js';
import { compileDriver } from '../../../src/core/meter/compile-driver.js';
import { formatProblem, type Problem } from '../../../src/core/problems.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { profileKind } from '../../../src/core/profile/profile-kind.js';
import { isFault, measureFunctions } from '../../../src/core/reading.js';
import { createLogParser, LogError } from '../../../src/core/reading-log.js';
import { chainStart, prevOf } from '../../../src/core/session-chain.js';
import { libraryKind } from '../../../src/core/share/library-format.js';
import { foldStored, openStored, UnsoundEventError } from '../../../src/core/walk/fold-stored.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { renderCsv } from '../../../src/report/csv/render-csv.js';
import { renderHtml } from '../../../src/report/html/render-html.js';
import { renderMarkdown } from '../../../src/report/markdown/render-markdown.js';
import { chainStep } from '../../../src/store/chain-step.js';
import { LineFollower } from '../../../src/store/line-follower.js';
import { driverKind } from '../../../src/store/load-definitions.js';
import { attacks } from '../../report/hostile-session.js';
import { makeDocument, makeReport } from '../../report/make-report.js';
import { eventful } from '../../report/session-events.js';
import { arbitraryEvent } from '../../store/event-arbitrary.js';
import { recordingIds, recordingLines, shippedDrivers } from '../../support/driver-files.js';
import { changed, damaged } from './mutate.js';

export interface Target {
  readonly name: string;
  /** Throws where a case does not hold. */
  readonly property: fc.IProperty<unknown>;
}

const must = (holds: boolean, what: string): void => {
  if (!holds) throw new Error(what);
};

/** What may not be in anything that is shown. */
const acting = /(?!\n)[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}\u200b\u2060\ufeff]/u;

const readable = (problem: Problem, lines: number): void => {
  const line = formatProblem('FILE', problem);
  must(!acting.test(line) && !line.includes('\n'), `not one clean line: ${JSON.stringify(line)}`);
  must(line.length < 2000, `no short line: ${line.length} characters`);
  must(problem.what !== '' && problem.fix !== '', 'a problem without a word or a remedy');
  const { line: place = 0 } = problem;
  must(place >= 1 && place <= lines, `line ${place} of ${lines}`);
};

const definition = <T>(
  kind: DefinitionKind<T>,
  texts: fc.Arbitrary<string>,
  use: (content: T) => void,
): fc.IProperty<[string]> =>
  fc.property(texts, (text) => {
    const { content, problems }: DefinitionRead<T> = readDefinition(kind, text);
    const lines = text.split('\n').length;
    for (const problem of problems) readable(problem, lines);
    must(content !== undefined || problems.length > 0, 'refused without a word');
    if (content !== undefined) use(content);
    must(!('x' in Object.prototype), 'the prototype of everything was changed');
  });

const folder = (path: string): readonly string[] =>
  readdirSync(new URL(`../../../${path}/`, import.meta.url))
    .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
    .map((name) => readFileSync(new URL(`../../../${path}/${name}`, import.meta.url), 'utf8'));

const either = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof(damaged(texts), changed(texts));

const frames = recordingIds.flatMap((id) =>
  recordingLines(id).map((line) => (line as { frame: string }).frame),
);

const decoders = shippedDrivers().map((driver) => ({ driver, ...compileDriver(driver) }));

const wire: fc.IProperty<unknown> = fc.property(
  fc.constantFrom(...decoders),
  fc.constantFrom(...measureFunctions),
  fc.array(fc.oneof(fc.constantFrom(...frames), damaged(frames)), { maxLength: 4 }),
  fc.constantFrom('\r\n', '\n', '\r', ''),
  fc.nat(60),
  fc.boolean(),
  ({ driver, decode }, measure, lines, end, cutAt, dropFirstPartial) => {
    const { maxFrame, encoding } = driver.wire;
    const blocks = driver.talk.style === 'scpi';
    const framer = createFramer({ maxFrame, encoding, dropFirstPartial, blocks });
    const bytes = Buffer.from(lines.map((line) => line + end).join(''), 'latin1');
    const got = [...framer.push(bytes.subarray(0, cutAt)), ...framer.push(bytes.subarray(cutAt))];
    for (const frame of got) {
      must(frame.text.length <= Math.max(maxFrame, 81), `a frame of ${frame.text.length}`);
      if ('overlong' in frame) continue;
      const reading = decode(1, frame.text, { function: measure });
      if ('value' in reading) must(Number.isFinite(reading.value), 'a number that is none');
      if (isFault(reading)) must(!acting.test(reading.fault), 'a fault that acts');
    }
  },
);

const driverTexts = folder('drivers');
const driverReader = definition(driverKind, either(driverTexts), (driver) => {
  const { decode } = compileDriver(driver);
  for (const frame of ['', 'a'.repeat(200), '  389.6 Ohm', '+3.89600000E+02', 'OL']) {
    decode(1, frame, { function: 'resistance' });
  }
});

const fixture = readFileSync(new URL('../../fixtures/short-row.json', import.meta.url), 'utf8');
const profileReader = definition(
  profileKind,
  either([...folder('profiles'), fixture]),
  (profile) => {
    must(planWalk(profile, profile.measure).pins.length > 0, 'a profile without a pin to walk');
  },
);

const index = JSON.stringify(
  {
    format: 'pinwalk-library/1',
    title: 'Shop',
    entries: (['profile', 'driver', 'drill'] as const).map((kind) => ({
      ...{ kind, id: 'j1', version: '1', title: 'J1' },
      files: [
        { name: 'j1.json', sha256: 'a'.repeat(64), bytes: 9 },
        ...(kind === 'drill' ? [{ name: 'j1.jsonl', sha256: 'b'.repeat(64), bytes: 9 }] : []),
      ],
    })),
  },
  null,
  1,
);
const nameOnly = /^\w[\w+#.-]*\.jsonl?$/u;
const libraryIndex = definition(libraryKind, either([index]), ({ entries }) => {
  for (const { name } of entries.flatMap(({ files }) => files)) {
    must(nameOnly.test(name) && !name.includes('..'), `a name that leads away: ${name}`);
  }
});

const settings = JSON.stringify({
  format: 'pinwalk-config/1',
  ...{ link: 'virtual:demo', driver: 'scpi-read', profile: 'demo', cues: 'tones', technician: 'A' },
  ...{ library: 'https://shop.example/l/', tokenFile: 'token', heatLimits: { run: 30 } },
});
const settingsReader = definition(configKind, either([settings]), () => undefined);

/** A session of a few lines, sound from first to last, as it would lie in a file. */
const sessionText = (events: readonly WalkEvent[]): string => {
  let chain = chainStart;
  return events
    .map((event, seq) => {
      const line = encodeEvent(seq, event, prevOf(chain));
      chain = chainStep(chain, Buffer.from(line));
      return `${line}\n`;
    })
    .join('');
};
const opening = eventful[0] as WalkEvent;
const pieces = Array.from({ length: Math.ceil((eventful.length - 1) / 8) }, (_, at) =>
  sessionText([opening, ...eventful.slice(1 + 8 * at, 9 + 8 * at)]),
);
/** One line of a session changed so that it is JSON still. */
const changedLine = fc
  .tuple(fc.constantFrom(...pieces), fc.nat(100), fc.nat(1_000_000), fc.nat(1_000_000))
  .chain(([text, at]) => {
    const lines = text.split('\n').slice(0, -1);
    const place = at % lines.length;
    return changed([lines[place] ?? '{}']).map((line) => lines.with(place, line).join('\n'));
  });

/** Refused in words is well; a slip of the program's own is none of those words. */
const orRefused = (work: () => void): void => {
  try {
    work();
  } catch (error) {
    if (!(error instanceof UnsoundEventError) || error.cause instanceof TypeError) throw error;
    must(!acting.test(error.message), `words that act: ${JSON.stringify(error.message)}`);
  }
};

const sessionReader = (isHashed: boolean): fc.IProperty<unknown> =>
  fc.property(fc.oneof(damaged(pieces), changedLine), (text) => {
    const bytes = Buffer.from(text);
    const problems: Problem[] = [];
    const follower = new LineFollower(isHashed, (problem) => void problems.push(problem));
    let state: WalkState | null = null;
    let lines = 0;
    for (let from = 0; from < bytes.length; lines += 1) {
      const found = bytes.indexOf(0x0a, from);
      const to = found < 0 ? bytes.length : found;
      const event = follower.take({ buffer: bytes, from, to, ended: found >= 0 });
      orRefused(() => {
        if (event?.type === 'session-opened') state = openStored(event);
        else if (event !== undefined && state !== null) state = foldStored(state, event);
      });
      from = to + 1;
    }
    const end = follower.end();
    for (const problem of problems) readable(problem, Math.max(1, lines));
    if (isHashed && problems.length === 0) {
      // The chain holds every line but the last, which only the noted fingerprint does.
      const held = text.slice(0, 1 + text.lastIndexOf('\n', text.length - 2));
      must(end.tornBytes > 0 || soundBeginning(held), 'a change that was not seen');
    }
  });
const soundBeginning = (text: string): boolean => pieces.some((piece) => piece.startsWith(text));

const logLines = [
  '{"t":12.5,"function":"resistance","value":389.6}',
  '{"t":12.9,"function":"resistance","overload":true,"range":600,"flags":["hold"]}',
  '{"t":14.0,"mark":"press"}',
  '{"t":15,"fault":"x"}',
];
const readingLog: fc.IProperty<unknown> = fc.property(either(logLines), (line) => {
  const parse = createLogParser();
  try {
    const input = parse(line);
    if (input.kind === 'reading' && 'value' in input.reading) {
      must(Number.isFinite(input.reading.value), 'a number that is none');
    }
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    must(!acting.test(error.message), `words that act: ${JSON.stringify(error.message)}`);
  }
});

const reportOf: fc.IProperty<unknown> = fc.property(
  fc.array(fc.oneof(arbitraryEvent, fc.constantFrom(...eventful.slice(1))), { maxLength: 6 }),
  fc.constantFrom(...attacks),
  fc.constantFrom('html', 'markdown', 'csv', 'arabic'),
  (events, attack, form) => orRefused(() => checkReport(events, attack, form)),
);

function checkReport(events: readonly WalkEvent[], attack: string, form: string): void {
  const title = `a${attack}`;
  const header =
    opening.type === 'session-opened'
      ? {
          ...opening,
          profile: { ...opening.profile, content: { ...opening.profile.content, title } },
        }
      : opening;
  const all = [header, ...events];
  const text =
    form === 'csv'
      ? renderCsv(makeReport(all))
      : form === 'markdown'
        ? renderMarkdown(makeDocument(all))
        : renderHtml(makeDocument(all, form === 'arabic' ? 'ar' : 'en'), '0.0.0');
  must(text.length < 2_000_000, `a report of ${text.length} characters`);
  must(!acting.test(form === 'csv' ? text.replaceAll('\r', '') : text), 'a report that acts');
  if (form !== 'csv' && form !== 'markdown') {
    must(
      !/<script|<img|<svg[^>]*onload|javascript:[^<]*"/iu.test(text.replace(/&[a-z#0-9]+;/giu, '')),
      'markup',
    );
  }
}

export const targets: readonly Target[] = [
  { name: 'framer and decoder', property: wire },
  { name: 'driver reader', property: driverReader },
  { name: 'profile reader', property: profileReader },
  { name: 'session reader', property: sessionReader(true) },
  { name: 'session fold', property: sessionReader(false) },
  { name: 'reading log', property: readingLog },
  { name: 'library index', property: libraryIndex },
  { name: 'settings', property: settingsReader },
  { name: 'report', property: reportOf },
] as readonly Target[];

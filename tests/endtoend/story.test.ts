// One whole story as a technician types it, against the virtual bench on a real socket: a tablet with a lit but black
// screen is brought in, walked, pressed, reworked, rechecked, tested and closed; its report is opened in a browser,
// its session delivered to a shop, replayed and drilled. Needs tmux and chromium, and a build as in `npm test`.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { expect, it, onTestFinished } from 'vitest';
import { openBrowser } from '../report/browser.js';
import { startShop } from '../share/shop-server.js';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { openTerminal } from '../support/terminal.js';

interface Told {
  readonly type: string;
  readonly [key: string]: unknown;
}

const driver = ['--driver', 'scpi-read'];
const eventsIn = (file: string): readonly Told[] =>
  readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Told);

it('should go from intake to handover, and be shared, replayed and drilled', async () => {
  const folder = temporaryFolder();
  const file = (name: string): string => join(folder, name);
  const env = { XDG_DATA_HOME: file('data'), XDG_CONFIG_HOME: file('config'), HOME: folder };
  const run = async (...args: readonly string[]) => {
    const done = await runProgram(args, { env });
    expect(done.code, `${args.join(' ')}\n${done.stderr}`).toBe(0);
    return done.lines.join('\n');
  };
  /** A board under a meter, and a technician who hears the walk through its session file. */
  const board = async (scenario: string, session: string): Promise<string> => {
    const name = `${scenario}?pace=steady&speed=2&rate=20`;
    const args = ['bench', name, '--tcp', '0', ...driver, '--hear', session];
    const serving = startProgram(args, { env });
    onTestFinished(async () => {
      serving.child.kill('SIGTERM');
      await serving.ended;
    });
    return serving.line((line) => line.startsWith('tcp:'));
  };

  // Intake, cautions and residual volts at the keyboard, then a walk without a key.
  const session = file('job.jsonl');
  const terminal = openTerminal({
    columns: 80,
    rows: 24,
    env,
    command: `node dist/main.js walk --link ${await board('demo', session)} ${driver.join(' ')} --profile demo --groups picture-data,control --press each --cues off --observe lamp=yes host=yes picture=no --session ${session}`,
  });
  onTestFinished(() => terminal.close());
  for (const [asked, answer] of [
    ['Ticket:', 'T-101'],
    ['Device:', 'demo instrument'],
    ['Reported symptom', 'lit, but black'],
    ['History', 'dropped once'],
    ['microscope', '-'],
    ['Does all of this hold?', 'y'],
  ] as const) {
    await terminal.until(asked, 60);
    terminal.send(answer, 'Enter');
  }
  const isAsked = /Enter takes the reading[^\n]*\s*$/u;
  for (;;) {
    const shown = await terminal.until((now) => isAsked.test(now) || now.includes('ground 1 of 2'));
    if (!isAsked.test(shown)) break;
    terminal.send('Enter');
    await sleep(500);
  }
  await terminal.until('Not normal · 1', 180);
  terminal.send('q');
  await terminal.until('rc=0');
  const walked = eventsIn(session);
  const typesOf = new Set(walked.map(({ type }) => type));
  for (const type of [
    'intake-noted',
    'groups-proposed',
    'caution-confirmed',
    'residual-measured',
  ]) {
    expect(typesOf).toContain(type);
  }
  expect(walked.filter(({ type }) => type === 'act-taken')).toEqual([
    expect.objectContaining({ act: 'quit' }),
  ]);
  expect(walked.find(({ type }) => type === 'press-judged')).toMatchObject({
    ...{ line: 'LANE1_P', part: 'FL2', finding: 'loose' },
  });

  // Rework with the timer, and the proof that it held.
  const desk = startProgram(['rework', session, '--json'], {
    env,
    input: 'confirm\ntool hot-air\nset-point 330\nheat FL2\nstop\n',
  });
  expect((await desk.ended).code).toBe(0);
  const again = file('job-recheck.jsonl');
  const link = await board('demo-reworked', again);
  const options = ['--link', link, ...driver, '--cautions-confirmed', '--session', again];
  const recheck = await run('recheck', session, ...options, '--plain');
  expect(recheck).toContain('LANE1_P stays as it is, pressing FL2 changes nothing');
  expect(recheck).toContain('Recheck: good.');
  await run('test', session, '--draw', 'as-expected', '--amperes', '0.12', '--limit', '0.5');
  await run('test', session, '--function', 'picture and touch', '--works', 'yes');
  await run('close', session, '--as', 'repaired', '--cause', 'FL2 pad 1');
  await run('check', session);

  // The report, opened.
  const page = file('job.html');
  await run('report', session, '--out', page);
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const tab = await browser.context.newPage();
  const said: string[] = [];
  const requests: string[] = [];
  tab.on('console', (message) => said.push(message.text()));
  tab.on('pageerror', (error) => said.push(error.message));
  tab.on('request', (request) => requests.push(request.url()));
  await tab.goto(pathToFileURL(page).href);
  const owner = await tab.locator('.owner').textContent();
  expect(owner).toContain('lit, but black');
  expect(owner).toContain('picture and touch');
  for (const id of ['press', 'rework', 'recheck', 'tests', 'pins'])
    expect(await tab.locator(`section[id^="${id}"]`).count(), id).toBeGreaterThan(0);
  expect(await tab.locator('#press svg').count()).toBe(2);
  await tab.evaluate(axe.source);
  const { violations } = (await tab.evaluate('axe.run()')) as axe.AxeResults;
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(said).toEqual([]);
  expect(requests).toEqual([pathToFileURL(page).href]);

  // To the shop, without the customer's data.
  const shop = await startShop(folder);
  await run('share', 'deliver', session, '--to', `${shop.address}/inbox/`);
  expect(shop.taken).toHaveLength(1);
  const received = file('received.jsonl');
  writeFileSync(received, shop.taken[0]?.body ?? '');
  expect(shop.taken[0]?.body.toString()).not.toContain('lit, but black');
  await run('check', received);
  expect(await run('report', received, '--format', 'markdown', '--out', '-')).toContain(
    "Without the customer's data.",
  );

  // Seen again, and taught from.
  const replayed = await run('replay', session, '--plain', '--speed', 'max');
  expect(replayed).toContain('LANE1_P reads again when FL2 is pressed');
  const drill = file('black-screen.json');
  const sha256 = createHash('sha256').update(readFileSync(session)).digest('hex');
  writeFileSync(
    drill,
    JSON.stringify({
      ...{ format: 'pinwalk-drill/1', id: 'black-screen', title: 'Lit, but black', level: 1 },
      briefing: 'An instrument whose lamp works.',
      ...{ session: 'job.jsonl', sha256 },
      ...{ asks: ['part', 'finding'], pins: 'findings-and-as-many' },
      provenance: { by: 'tests', date: '2026-01-31', how: 'walked just now' },
    }),
  );
  const taught = async (answers: readonly string[]): Promise<readonly Told[]> => {
    const input = `${answers.join('\n')}\n`;
    const { lines } = await runProgram(['drill', drill, '--json'], { env, input });
    return lines.map((line) => JSON.parse(line) as Told);
  };
  const guessed = await taught(new Array<string>(9).fill('1'));
  const marks = guessed.filter(({ type }) => type === 'answer-marked');
  const learnt = await taught(marks.map(({ best }) => (best as readonly string[])[0] ?? ''));
  const of = marks.length;
  expect(of).toBeGreaterThan(1);
  expect(learnt.at(-1)).toMatchObject({ type: 'drill-finished', of, points: of });
}, 600_000);

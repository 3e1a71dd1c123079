// Makes the pictures of the screens and of the report anew, from the built program in a real terminal and a real
// browser: `npm run pictures`, or `npm run pictures -- desk drill report` for some. Needs tmux, chromium and the font
// DejaVu Sans Mono (Debian: fonts-dejavu-core). Nothing in a picture is drawn by hand.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { openBrowser } from '../report/browser.js';
import { openTerminal, type Terminal } from '../support/terminal.js';
import { darkPaper, drawScreen } from './picture/draw-screen.js';
import { parseScreen } from './picture/parse-screen.js';

const folder = fileURLToPath(new URL('../pictures/', import.meta.url));
const fonts = ['DejaVuSansMono.ttf', 'DejaVuSansMono-Bold.ttf'].map(
  (file) => `/usr/share/fonts/truetype/dejavu/${file}`,
);
const zoom = 1.5;

const startDemo = (columns: number, rows: number): Terminal =>
  openTerminal({
    columns,
    rows,
    command: `node dist/main.js walk --link 'virtual:demo?speed=1.5' --cues off --session "$HOME/walk.jsonl"`,
  });

const take = (terminal: Terminal, name: string, columns: number): void => {
  const svg = drawScreen(parseScreen(terminal.styled()), columns, darkPaper);
  const font = { fontFiles: fonts, loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans Mono' };
  const picture = new Resvg(svg, { fitTo: { mode: 'zoom', value: zoom }, font }).render();
  writeFileSync(`${folder}${name}.png`, picture.asPng());
  process.stdout.write(`tests/pictures/${name}.png\n`);
};

const patienceS = 240;

const atEighty = async (): Promise<void> => {
  const terminal = startDemo(80, 24);
  try {
    await terminal.until('ground 2 of 2', patienceS);
    take(terminal, 'ready', 80);
    await terminal.until('Is the line open?', patienceS);
    take(terminal, 'question', 80);
    await terminal.until(/lift → next 1\d /u, patienceS);
    take(terminal, 'walk', 80);
    await terminal.until(/Not normal · /u, patienceS);
    take(terminal, 'review', 80);
  } finally {
    terminal.close();
  }
};

const atHundredTwenty = async (): Promise<void> => {
  const terminal = startDemo(120, 40);
  try {
    await terminal.until(/lift → next (?:2[5-9]|3\d) /u, patienceS);
    take(terminal, 'walk-large', 120);
  } finally {
    terminal.close();
  }
};

const pressTest = async (): Promise<void> => {
  const terminal = openTerminal({
    columns: 100,
    rows: 30,
    command: `node dist/main.js press --link 'virtual:loose-filter?seed=3' --line LANE1_P --cues off --session "$HOME/press.jsonl"`,
  });
  try {
    // One window into bare board: what was found at the part stands beside what is under the tool.
    await terminal.until(/pressed {5}0 {9}1 .*reading returns when FL2/su, patienceS);
    take(terminal, 'press', 100);
  } finally {
    terminal.close();
  }
};

/** A recorded session, copied to where it can be added to. */
const recorded = 'cp recordings/sessions/loose-filter.jsonl "$HOME/job.jsonl"';

const atTheDesk = async (): Promise<void> => {
  const command = `${recorded}; node dist/main.js rework "$HOME/job.jsonl" --cues off`;
  const terminal = openTerminal({ columns: 80, rows: 24, command });
  try {
    await terminal.until('all of this is so', patienceS);
    terminal.send('Enter', 'e', '3', '3', '0', 'Enter', 'm', 't');
    await terminal.until('HEAT ON', patienceS);
    await sleep(12_000);
    take(terminal, 'rework', 80);
    terminal.send('t', 'q');
    await terminal.until('rc=0', patienceS);
  } finally {
    terminal.close();
  }
};

const inADrill = async (): Promise<void> => {
  const command = 'node dist/main.js drill loose-filter';
  const terminal = openTerminal({ columns: 80, rows: 24, command });
  try {
    await terminal.until('begin', patienceS);
    terminal.send('Enter');
    await terminal.until('question 1 of', patienceS);
    terminal.send('n');
    await terminal.until('What is this line?', patienceS);
    terminal.send('5');
    await terminal.until('Right.', patienceS);
    take(terminal, 'drill', 80);
  } finally {
    terminal.close();
  }
};

/** The first page, as the owner sees it. */
const asReport = async (): Promise<void> => {
  const finish = [
    'rework "$HOME/job.jsonl" --action reflow --part FL2 --tool hot-air --set-point 330 --seconds 22',
    'test "$HOME/job.jsonl" --function "picture and touch" --works yes',
    'report "$HOME/job.jsonl"',
  ].map((step) => `node dist/main.js ${step}`);
  const command = `${[recorded, ...finish].join(' && ')}`;
  const terminal = openTerminal({ columns: 80, rows: 24, command });
  const browser = await openBrowser();
  try {
    await terminal.until('rc=0', patienceS);
    const page = await browser.context.newPage();
    await page.setViewportSize({ width: 860, height: 1000 });
    await page.goto(pathToFileURL(join(terminal.folder, 'job.html')).href);
    const clip = { x: 0, y: 0, width: 860, height: 960 };
    await page.screenshot({ path: `${folder}report.png`, clip });
    process.stdout.write('tests/pictures/report.png\n');
  } finally {
    terminal.close();
    await browser.close();
  }
};

const pictures: Readonly<Record<string, () => Promise<void>>> = {
  walk: atEighty,
  large: atHundredTwenty,
  press: pressTest,
  desk: atTheDesk,
  drill: inADrill,
  report: asReport,
};

const missing = fonts.filter((file) => !existsSync(file));
if (missing.length > 0) {
  process.stderr.write(`missing ${missing.join(', ')}; install fonts-dejavu-core\n`);
  process.exitCode = 1;
} else {
  mkdirSync(folder, { recursive: true });
  const asked = process.argv.slice(2);
  const wanted = Object.entries(pictures).filter(
    ([name]) => asked.length === 0 || asked.includes(name),
  );
  await Promise.all(wanted.map(([, make]) => make()));
}

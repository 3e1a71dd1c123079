// Makes the pictures of the screens anew, from the built program in a real terminal: `npm run pictures`. Needs tmux
// and the font DejaVu Sans Mono (Debian: fonts-dejavu-core). Nothing in a picture is drawn by hand.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
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

const missing = fonts.filter((file) => !existsSync(file));
if (missing.length > 0) {
  process.stderr.write(`missing ${missing.join(', ')}; install fonts-dejavu-core\n`);
  process.exitCode = 1;
} else {
  mkdirSync(folder, { recursive: true });
  await Promise.all([atEighty(), atHundredTwenty(), pressTest()]);
}

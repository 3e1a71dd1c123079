// Every colour, symbol and line character of the screens. Verdicts are told by word and symbol; colour only
// helps. Four ways to colour (full, 256, the terminal's sixteen, none), two backgrounds, and plain ASCII.
import type { Verdict } from '../core/verdict.js';
import { verdictSigns } from '../core/words/verdict-signs.js';

export interface Style {
  readonly color?: string;
  readonly bold?: boolean;
  readonly inverse?: boolean;
  readonly underline?: boolean;
}

export interface Appearance {
  readonly colours: 'full' | 'many' | 'sixteen' | 'none';
  readonly background: 'dark' | 'light';
  /** False: ASCII only. */
  readonly unicode: boolean;
}

export type Role =
  | 'text'
  | 'quiet'
  | 'faint'
  | 'strong'
  | 'accent'
  | 'notice'
  | 'alarm'
  | 'moving'
  | 'still';

export interface Theme {
  readonly unicode: boolean;
  /** Stands for the part of a large word that is not filled yet, where colour cannot tell; null where it can. */
  readonly unfilled: string | null;
  readonly style: Readonly<Record<Role, Style>>;
  readonly verdict: Readonly<Record<Verdict, Style>>;
  readonly symbol: Readonly<Record<Verdict, string>>;
  readonly line: {
    readonly rule: string;
    readonly limit: string;
    readonly band: string;
    readonly rail: string;
    readonly edge: string;
    readonly here: string;
    readonly below: string;
    readonly above: string;
    readonly mark: string;
    readonly dot: string;
    readonly arrow: string;
    readonly full: string;
    readonly empty: string;
    readonly more: string;
    readonly choice: string;
    readonly upDown: string;
    readonly cursor: string;
    readonly chipLeft: string;
    readonly chipRight: string;
    /** The frame of what must not be missed. */
    readonly frame: { readonly top: string; readonly side: string; readonly bottom: string };
  };
}

type Palette = Readonly<Record<Verdict | 'accent' | 'quiet' | 'faint', string>>;

const dark: Palette = {
  normal: '#74bfae',
  low: '#e6b450',
  high: '#b9a0f5',
  short: '#f56a92',
  open: '#ff8d5c',
  unsure: '#d9d2bd',
  wobble: '#6fbaf2',
  unread: '#77808c',
  accent: '#f0e2b6',
  quiet: '#9aa3ad',
  faint: '#565e68',
};

const light: Palette = {
  normal: '#1f7a68',
  low: '#8a5d00',
  high: '#6a48c4',
  short: '#b8184e',
  open: '#b84a12',
  unsure: '#5f563c',
  wobble: '#1767a8',
  unread: '#7a828c',
  accent: '#4a3f17',
  quiet: '#5c646d',
  faint: '#a9b0b8',
};

const many: Palette = {
  normal: 'ansi256(79)',
  low: 'ansi256(179)',
  high: 'ansi256(141)',
  short: 'ansi256(204)',
  open: 'ansi256(209)',
  unsure: 'ansi256(187)',
  wobble: 'ansi256(75)',
  unread: 'ansi256(244)',
  accent: 'ansi256(223)',
  quiet: 'ansi256(247)',
  faint: 'ansi256(240)',
};

const manyOnLight: Palette = {
  normal: 'ansi256(29)',
  low: 'ansi256(94)',
  high: 'ansi256(62)',
  short: 'ansi256(161)',
  open: 'ansi256(166)',
  unsure: 'ansi256(59)',
  wobble: 'ansi256(25)',
  unread: 'ansi256(244)',
  accent: 'ansi256(58)',
  quiet: 'ansi256(241)',
  faint: 'ansi256(249)',
};

const sixteen: Palette = {
  normal: 'cyan',
  low: 'yellow',
  high: 'magenta',
  short: 'redBright',
  open: 'yellowBright',
  unsure: 'white',
  wobble: 'blueBright',
  unread: 'gray',
  accent: 'whiteBright',
  quiet: 'white',
  faint: 'gray',
};

/** Sixteen colours on white paper: the bright ones cannot be read there. */
const sixteenOnLight: Palette = {
  ...sixteen,
  short: 'red',
  open: 'red',
  low: 'blue',
  wobble: 'blue',
  unsure: 'black',
  accent: 'black',
  quiet: 'black',
};

const palettes = {
  full: { dark, light },
  many: { dark: many, light: manyOnLight },
  sixteen: { dark: sixteen, light: sixteenOnLight },
} as const;

const symbols: Readonly<Record<Verdict, string>> = {
  normal: '━',
  low: '▾',
  high: '▴',
  short: '┻',
  open: '○',
  unsure: '?',
  wobble: '≈',
  unread: '·',
};

export const createTheme = ({ colours, background, unicode }: Appearance): Theme => {
  const palette = colours === 'none' ? null : palettes[colours][background];
  const paint = (name: keyof Palette): Style => (palette === null ? {} : { color: palette[name] });
  return {
    unicode,
    unfilled: colours === 'none' ? (unicode ? '░' : '.') : null,
    style: {
      text: {},
      quiet: paint('quiet'),
      faint: paint('faint'),
      strong: { bold: true },
      accent: { ...paint('accent'), bold: true },
      notice: { ...paint('accent'), bold: true, inverse: true },
      alarm: { ...paint('open'), bold: true, inverse: true },
      moving: paint('quiet'),
      still: { ...paint('accent'), bold: true },
    },
    verdict: {
      normal: paint('normal'),
      low: { ...paint('low'), bold: true },
      high: { ...paint('high'), bold: true },
      short: { ...paint('short'), bold: true },
      open: { ...paint('open'), bold: true },
      unsure: { ...paint('unsure'), bold: true },
      wobble: { ...paint('wobble'), bold: true },
      unread: paint('unread'),
    },
    symbol: unicode ? symbols : verdictSigns,
    line: unicode
      ? {
          rule: '─',
          limit: '╌',
          band: '━',
          rail: '┄',
          edge: '┃',
          here: '●',
          below: '◀',
          above: '▶',
          mark: '╵',
          dot: '·',
          arrow: '→',
          full: '■',
          empty: '□',
          more: '…',
          choice: '▸',
          upDown: '↑↓',
          cursor: '▁',
          chipLeft: '▐',
          chipRight: '▌',
          frame: { top: '▀', side: '█', bottom: '▄' },
        }
      : {
          rule: '-',
          limit: '-',
          band: '=',
          rail: '.',
          edge: '|',
          here: 'O',
          below: '<',
          above: '>',
          mark: '|',
          dot: '.',
          arrow: '->',
          full: '#',
          empty: '.',
          more: '~',
          choice: '>',
          upDown: 'up/down',
          cursor: '_',
          chipLeft: '[',
          chipRight: ']',
          frame: { top: '#', side: '#', bottom: '#' },
        },
  };
};

// What this terminal can show, as far as its environment tells. Whatever is not known is taken as the plainer.
import type { Appearance } from './theme.js';

type Environment = Readonly<Record<string, string | undefined>>;

/** @param depth bits of colour the terminal says it has: 1, 4, 8 or 24. */
export const detectAppearance = (env: Environment, depth: number): Appearance => ({
  colours: coloursOf(env, depth),
  background: backgroundOf(env),
  unicode: isUnicode(env),
});

const coloursOf = (env: Environment, depth: number): Appearance['colours'] => {
  // https://no-color.org: any value that is not empty.
  if ((env.NO_COLOR ?? '') !== '' || env.TERM === 'dumb' || depth <= 1) return 'none';
  // A multiplexer may say less of itself than of the terminal it runs in.
  const full = depth >= 24 || env.COLORTERM === 'truecolor' || env.COLORTERM === '24bit';
  return full ? 'full' : depth >= 8 ? 'many' : 'sixteen';
};

/** `COLORFGBG` is "foreground;background" in the sixteen colours; 7 and 15 are the white ones. */
const backgroundOf = (env: Environment): Appearance['background'] => {
  const background = env.COLORFGBG?.split(';').at(-1);
  return background === '7' || background === '15' ? 'light' : 'dark';
};

/** The locale that counts for characters, by POSIX precedence. Without any it is the C locale: ASCII. */
const isUnicode = (env: Environment): boolean => {
  if (env.TERM === 'linux') return false;
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((value) => (value ?? '') !== '') ?? '';
  return /utf-?8/iu.test(locale);
};

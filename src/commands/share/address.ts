// Where a shop's server is and which token it is given: an option, else the configuration.
import { cleanText } from '../../core/clean-text.js';
import { english } from '../../core/words/english.js';
import { readToken, TokenError } from '../../share/token.js';
import { configuration } from '../configuration.js';
import { exitCodes, UserError } from '../user-error.js';

const words = english.share;

export interface Server {
  readonly address: URL;
  readonly token: string | null;
}

/** @throws UserError */
export const serverFor = (key: 'library' | 'delivery', asked: string | undefined): Server => {
  const settings = configuration();
  const text = asked ?? settings[key];
  if (text === undefined) {
    const option = key === 'library' ? '--from' : '--to';
    throw new UserError(words.noAddress(key, option), exitCodes.usage);
  }
  const address = parse(text);
  const owner = parse(key === 'delivery' ? text : (settings.delivery ?? text));
  // One token for one server: a library on another host never sees the one for deliveries.
  return { address, token: address.origin === owner.origin ? token(settings.tokenFile) : null };
};

const parse = (text: string): URL => {
  const url = URL.canParse(text) ? new URL(text) : null;
  const isAddress = url !== null && /^https?:$/u.test(url.protocol);
  if (isAddress && url.username === '' && url.password === '') return url;
  // A name or password in it is not repeated on the screen.
  const shown = cleanText(text.replace(/\/\/[^/]*@/u, '//…@'), 200);
  throw new UserError(words.badAddress(shown), exitCodes.usage);
};

const token = (file: string | undefined): string | null => {
  try {
    return readToken(file);
  } catch (error) {
    if (!(error instanceof TokenError)) throw error;
    const shown = error.file === null ? null : cleanText(error.file, 300);
    throw new UserError(words.token(error.slip, shown), exitCodes.badFile);
  }
};

// Cuts what the terminal sends into keys. Several keys in one chunk are several keys, one key over several
// chunks is one, and pasted text is never taken for keys. Pure: the waiting is done by the keyboard.
import { characterName, sequenceName } from './key-names.js';

export interface Key {
  /** As in a key map: 'o', 'enter', 'f5', 'shift+f1', 'seq:1b5b39397e'. */
  readonly name: string;
  /** What it would write in a line of text; empty for keys that write nothing. */
  readonly text: string;
  readonly pasted?: true;
}

export interface ParsedKeys {
  readonly keys: readonly Key[];
  /** The beginning of a sequence whose end has not come yet. */
  readonly rest: string;
}

const escapeByte = '\u001b';
const pasteBegins = '\u001b[200~';
const pasteEnds = '\u001b[201~';
/** Longer than any key sends: what has no end by then is no sequence. */
const longestSequence = 32;
const longestPaste = 10_000;

/** What follows the escape of a whole sequence, and of one whose end has not come. */
const csi = /^\[(?:\[[A-E]|(?!\[)[0-?]*[ -/]*[@-~])/u;
const ss3 = /^O\d*[ -~]/u;
const unfinished = /^(?:\[(?:\[|[0-?]*[ -/]*)?|O\d*)?$/u;

/**
 * @param given the rest of the last call followed by the new chunk.
 * @param ended nothing more will come soon: a lone escape is the escape key.
 */
export const parseKeys = (given: string, ended = false): ParsedKeys => {
  const keys: Key[] = [];
  let text = given;
  while (text !== '') {
    if (text.startsWith(pasteBegins)) {
      const end = text.indexOf(pasteEnds);
      if (end < 0 && text.length < longestPaste) return { keys, rest: text };
      const inside = text.slice(pasteBegins.length, end < 0 ? undefined : end);
      keys.push({ name: 'paste', text: inside, pasted: true });
      text = end < 0 ? '' : text.slice(end + pasteEnds.length);
      continue;
    }
    if (!text.startsWith(escapeByte)) {
      const character = String.fromCodePoint(text.codePointAt(0) ?? 0);
      const writes = (text.codePointAt(0) ?? 0) >= 0x20 && character !== '\u007f';
      keys.push({ name: characterName(character), text: writes ? character : '' });
      text = text.slice(character.length);
      continue;
    }
    const body = text.slice(1);
    const found = (csi.exec(body) ?? ss3.exec(body))?.[0];
    const partial = unfinished.test(body);
    if (found !== undefined) {
      keys.push({ name: sequenceName(escapeByte + found), text: '' });
      text = body.slice(found.length);
    } else if (!ended && text.length < longestSequence && partial) {
      return { keys, rest: text };
    } else if (body !== '' && !body.startsWith(escapeByte) && !partial) {
      const character = String.fromCodePoint(body.codePointAt(0) ?? 0);
      keys.push({ name: `alt+${characterName(character)}`, text: '' });
      text = body.slice(character.length);
    } else {
      keys.push({ name: 'escape', text: '' });
      text = body;
    }
  }
  return { keys, rest: '' };
};

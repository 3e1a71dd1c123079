// What a key means in a drill. Answers are numbered, so that no letter of the walk's own keys is in the way.
import type { Control } from '../../core/replay/control.js';
import type { DrillView } from '../../session/drill-session.js';
import type { Key } from '../keys/parse-keys.js';

export type DrillWish =
  | { readonly wish: 'answer'; readonly choice: string }
  | { readonly wish: 'go-on' | 'skip-ahead' | 'leave' | 'nothing' }
  | { readonly wish: 'control'; readonly control: Control };

export const wishOf = ({ name }: Key, { asked, explaining, done }: DrillView): DrillWish => {
  if (name === 'q' || name === 'ctrl+c') return { wish: 'leave' };
  if (done) return { wish: name === 'enter' ? 'leave' : 'nothing' };
  if (explaining) return { wish: name === 'enter' || name === 'space' ? 'go-on' : 'nothing' };
  if (asked !== null) {
    const choice = /^[1-9]$/u.test(name) ? asked.choices[Number(name) - 1] : undefined;
    return choice === undefined ? { wish: 'nothing' } : { wish: 'answer', choice };
  }
  switch (name) {
    case 'space':
    case 'p':
      return { wish: 'control', control: { control: 'pause-or-go-on' } };
    case '+':
    case 'up':
      return { wish: 'control', control: { control: 'faster' } };
    case '-':
    case 'down':
      return { wish: 'control', control: { control: 'slower' } };
    case 'n':
    case 'enter':
      return { wish: 'skip-ahead' };
    default:
      return { wish: 'nothing' };
  }
};

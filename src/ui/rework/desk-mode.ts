// What a key means at the rework desk. Pure: a key and what stands there give what stands there next, and what is
// to be done. A pedal that begins a press test in the walk turns heat on and off here.
import type { Profile } from '../../core/profile/profile-format.js';
import type { Setting } from '../../core/rework/decide-rework.js';
import type { Place } from '../../core/rework/heat-limits.js';
import { longestNote, placeNamed, readFigure } from '../../core/rework/parse-desk-line.js';
import {
  type ReworkAction,
  type ReworkTool,
  reworkActions,
  reworkTools,
} from '../../core/rework/rework-events.js';
import type { ReworkState } from '../../core/rework/rework-state.js';
import type { DeskAct } from '../../session/rework-desk.js';
import { editText } from '../edit-text.js';
import { actOfKey, type KeyMap } from '../keys/key-map.js';
import type { Key } from '../keys/parse-keys.js';

export interface DeskMode {
  readonly place: Place;
  readonly setting: Setting;
  readonly action: ReworkAction;
  readonly typing: { readonly what: Typed; readonly text: string } | null;
  /** Why the last key did nothing. */
  readonly notice: 'not-number' | 'heat-is-on' | null;
}
export type Typed = 'place' | 'set-point' | 'airflow' | 'note';

export interface DeskStep {
  readonly mode: DeskMode;
  readonly acts: readonly DeskAct[];
  readonly quit?: true;
}

export interface DeskView {
  readonly state: ReworkState;
  readonly profile: Profile;
  /** In the order in which they are offered. */
  readonly parts: readonly string[];
  readonly keys: KeyMap;
}

const stay = (mode: DeskMode, ...acts: readonly DeskAct[]): DeskStep => ({
  mode: { ...mode, notice: null },
  acts,
});

export const pressDeskKey = (mode: DeskMode, key: Key, view: DeskView): DeskStep => {
  if (mode.typing !== null) return type(mode, mode.typing, key, view.profile);
  const { state, keys } = view;
  const act = actOfKey(keys, key.name);
  if (act === 'quit') return state.heat === null ? quit(mode) : notNow(mode);
  if (!state.confirmed && key.name === 'enter') return stay(mode, { kind: 'confirm' });
  if (act === 'press' || act === 'pause') return stay(mode, heatAct(mode, state));
  if (act === 'next' || act === 'back') return stay(nextPart(mode, view, act === 'next' ? 1 : -1));
  if (act === 'note') return typed(mode, 'note');
  switch (key.name) {
    case 'a':
      return typed(mode, 'place');
    case 'e':
      return typed(mode, 'set-point');
    case 'f':
      return typed(mode, 'airflow');
    case 'm':
      return stay({ ...mode, setting: { ...mode.setting, tool: nextTool(mode.setting.tool) } });
    case 'x':
      return stay({ ...mode, action: after(reworkActions, mode.action) });
    case 'l':
      return stay(mode, { kind: 'log', entry: { action: mode.action, ...mode.place } });
    default:
      return stay(mode);
  }
};

const quit = (mode: DeskMode): DeskStep => ({ mode, acts: [], quit: true });
const notNow = (mode: DeskMode): DeskStep => ({
  mode: { ...mode, notice: 'heat-is-on' },
  acts: [],
});
const typed = (mode: DeskMode, what: Typed): DeskStep =>
  stay({ ...mode, typing: { what, text: '' } });

const heatAct = ({ place, setting, action }: DeskMode, { heat }: ReworkState): DeskAct =>
  heat === null ? { kind: 'heat-on', place, setting } : { kind: 'heat-off', action };

const after = <T>(all: readonly T[], one: T): T => all[(all.indexOf(one) + 1) % all.length] ?? one;
const nextTool = (tool: ReworkTool | undefined): ReworkTool =>
  tool === undefined ? 'hot-air' : after(reworkTools, tool);

/** While heat is on it belongs to the place it was started on. */
const nextPart = (mode: DeskMode, { state, parts }: DeskView, by: 1 | -1): DeskMode => {
  if (state.heat !== null || parts.length === 0) return mode;
  const at = parts.indexOf(mode.place.part ?? '');
  const next = at < 0 ? 0 : (at + by + parts.length) % parts.length;
  return { ...mode, place: { part: parts[next] } };
};

const longest: Readonly<Record<Typed, number>> = {
  place: 40,
  'set-point': 7,
  airflow: 7,
  note: longestNote,
};

const type = (
  mode: DeskMode,
  { what, text }: NonNullable<DeskMode['typing']>,
  key: Key,
  profile: Profile,
): DeskStep => {
  const left = { ...mode, typing: null };
  if (key.name === 'escape' || key.name === 'ctrl+c') return stay(left);
  if (key.name !== 'enter') {
    return stay({ ...mode, typing: { what, text: editText(text, key, longest[what]) } });
  }
  const said = text.trim();
  if (said === '') return stay(left);
  if (what === 'note') {
    return stay(left, {
      kind: 'log',
      entry: { action: 'inspect', ...mode.place, note: said },
    });
  }
  if (what === 'place') return stay({ ...left, place: placeNamed(said, profile) });
  const figure = readFigure(said);
  if (figure === null) return { mode: { ...left, notice: 'not-number' }, acts: [] };
  const changed = what === 'airflow' ? { airflow: figure } : { setPoint: figure };
  return stay({ ...left, setting: { ...mode.setting, ...changed } });
};

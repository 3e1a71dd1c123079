// A whole walk on the virtual bench, heard and not seen: what is said tells every verdict in order, and what is
// said next was guessed ahead.
import { beforeAll, describe, expect, it } from 'vitest';
import type { Cue } from '../../../src/core/cues/cue.js';
import { cueFor } from '../../../src/core/cues/cue-for.js';
import { likelyCues, standingCues } from '../../../src/core/cues/likely-cues.js';
import { momentOf } from '../../../src/core/cues/moment.js';
import { spokenPin } from '../../../src/core/cues/spoken-pin.js';
import { decide } from '../../../src/core/walk/decide.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { english } from '../../../src/core/words/english.js';
import { type LiveWalk, verdictsOf, walkOnBench } from '../../bench/support/live-walk.js';
import { demoDriver, demoProfile, openedDemo } from './opened-demo.js';

interface Heard {
  readonly cues: readonly Cue[];
  /** The state in which the moment was guessed. */
  readonly before: WalkState;
}

let walk: LiveWalk;
const heard: Heard[] = [];

beforeAll(() => {
  walk = walkOnBench({ driver: demoDriver, profile: demoProfile });
  let state = openWalk(openedDemo());
  for (const input of walk.inputs) {
    const before = state;
    const decision = decide(before, input);
    ({ state } = decision);
    const cues = decision.events.flatMap((event) => cueFor(event, decision.state, english) ?? []);
    if (cues.length > 0) heard.push({ cues: momentOf(cues).cues, before });
  }
});

describe('a walk by ear', () => {
  it('should say the last verdict of every pin, and agree with the file', () => {
    expect(walk.finished).toBe(true);
    const said = heard.flatMap(({ cues }) => cues.map(({ speech }) => speech));
    const verdicts = verdictsOf(walk.events);
    expect(verdicts.size).toBe(40);
    expect(new Set(verdicts.values()).size).toBeGreaterThan(2);
    for (const [pin, verdict] of verdicts) {
      const name = spokenPin(pin, english.spoken);
      const last = said.findLast((text) => text.startsWith(`${name}, `));
      expect(last).toBe(`${name}, ${english.verdict[verdict]}`);
    }
  });

  it('should step with one note for every pin that is taken, so that tones alone can be counted', () => {
    const taken = heard.flatMap(({ cues }) => cues).filter(({ kind }) => kind in english.verdict);
    expect(taken).toHaveLength(40);
  });

  it('should end with all pins walked, after the last verdict', () => {
    const last = heard.at(-1)?.cues.map(({ kind }) => kind) ?? [];
    expect(last.at(-1)).toBe('finished');
    expect(last).toHaveLength(2);
  });

  it('should have guessed verdicts and questions before they came, letter for letter', () => {
    const foretold = heard.flatMap(({ cues, before }) => {
      const guesses = new Set(
        [...likelyCues(before, english), ...standingCues(before, english)].map(
          ({ speech }) => speech,
        ),
      );
      return cues.map(({ kind, speech }) => ({ kind, guessed: guesses.has(speech) }));
    });
    const missed = foretold.filter(({ guessed }) => !guessed).map(({ kind }) => kind);
    expect(foretold.length).toBeGreaterThan(45);
    expect(missed).toEqual(['finished']);
  });
});

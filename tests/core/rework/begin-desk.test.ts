import { describe, expect, it } from 'vitest';
import type { Numbered } from '../../../src/core/events.js';
import { firstPlace, partsByDoubt } from '../../../src/core/rework/begin-desk.js';
import { noRework } from '../../../src/core/rework/rework-state.js';
import { loadProfile } from '../../../src/store/load-definitions.js';

const demoProfile = loadProfile('demo').content;

const suspect = (where: 'joint' | 'part' | 'lead', id: string) => ({
  where,
  id,
  lines: [],
  probability: 0.4,
});
const ranked = (suspects: readonly ReturnType<typeof suspect>[]): Numbered =>
  ({ type: 'suspects-ranked', seq: 9, t: 4, suspects }) as unknown as Numbered;

describe('the parts a rework desk offers', () => {
  const parts = Object.keys(demoProfile.parts ?? {});

  it('should be those suspected last before the rest, each once', () => {
    const before = [
      ranked([suspect('part', 'L2')]),
      ranked([suspect('joint', 'R25 pad 1'), suspect('lead', 'clip'), suspect('part', 'FL2')]),
    ];
    const offered = partsByDoubt(before, demoProfile);
    expect(offered.slice(0, 2)).toEqual(['R25', 'FL2']);
    expect([...offered].sort()).toEqual([...parts].sort());
    expect(firstPlace(before, noRework, demoProfile)).toEqual({ part: 'R25' });
  });

  it('should stand as the profile has them where nothing is suspected', () => {
    expect(partsByDoubt([], demoProfile)).toEqual(parts);
  });
});

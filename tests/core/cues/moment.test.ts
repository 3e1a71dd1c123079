// What sounds where several cues come at once.
import { describe, expect, it } from 'vitest';
import type { Cue, CueKind } from '../../../src/core/cues/cue.js';
import { levels } from '../../../src/core/cues/cue.js';
import { momentOf } from '../../../src/core/cues/moment.js';
import { sheet } from '../../../src/core/cues/sheet.js';

const cue = (kind: CueKind, speech: string = kind): Cue => ({ kind, ...sheet[kind], speech });
const heard = (...cues: readonly Cue[]) => momentOf(cues).cues.map(({ speech }) => speech);

describe('momentOf', () => {
  it('should let a verdict speak and not the place that follows from it', () => {
    expect(heard(cue('heard'), cue('normal'), cue('place'))).toEqual(['normal']);
  });

  it('should echo an act with the place it leads to', () => {
    expect(heard(cue('heard', 'back'), cue('place', 'six'))).toEqual(['back', 'six']);
  });

  it('should say two verdicts after each other, and the same thing once', () => {
    const seven = cue('normal', 'seven, normal');
    expect(heard(seven, cue('normal', 'eight, normal'), seven)).toEqual([
      'seven, normal',
      'eight, normal',
    ]);
  });

  it('should say of stops only how things stand at last, and no verdict beside them', () => {
    expect(heard(cue('freed'), cue('normal'), cue('held'))).toEqual(['held']);
    expect(heard(cue('realigned'), cue('unread'), cue('low'), cue('place'))).toEqual(['realigned']);
    expect(momentOf([cue('freed'), cue('low')]).level).toBe(levels.stop);
  });

  it('should refuse a moment without a cue', () => {
    expect(() => momentOf([])).toThrow(RangeError);
  });
});

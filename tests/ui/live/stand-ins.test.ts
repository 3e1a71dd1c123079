import { describe, expect, it } from 'vitest';
import { createStandIns } from '../../../src/ui/live/stand-ins.js';

const red = (text: string): string => `\u001b[31m${text}\u001b[39m`;

describe('stand-ins', () => {
  it('should give a painted line its place among blanks', () => {
    const { standFor, fill } = createStandIns();
    const [left, right] = [standFor(red('abc'), 3), standFor('de', 2)];
    expect([left.length, right.length]).toEqual([1, 1]);
    expect(fill(` ${left}     ${right}\n`)).toBe(` ${red('abc')}   de\n`);
  });

  it('should count a wide character as the columns it takes', () => {
    const { standFor, fill } = createStandIns();
    expect(fill(`${standFor('極極', 4)}    |`)).toBe('極極 |');
  });

  it('should add nothing behind the last line of a row', () => {
    const { standFor, fill } = createStandIns();
    expect(fill(`${standFor('abc', 3)}\n${standFor('d', 1)}`)).toBe('abc\nd');
  });

  it('should lay out nothing for an empty line', () => {
    expect(createStandIns().standFor('', 0)).toBe('');
  });

  it('should stand for the same line with the same character, so that a frame that is the same is seen to be', () => {
    const { standFor } = createStandIns();
    expect(standFor('one', 3)).toBe(standFor('one', 3));
    expect(standFor('two', 3)).not.toBe(standFor('one', 3));
  });

  it('should leave escape sequences and other text alone', () => {
    expect(createStandIns().fill('\u001b[2K\u001b[1A ready')).toBe('\u001b[2K\u001b[1A ready');
  });

  it('should keep the lines of the last frames, and no more, however long it runs', () => {
    const { standFor, fill } = createStandIns();
    for (let frame = 0; frame < 400; frame += 1) {
      const lines = Array.from({ length: 40 }, (_, row) => `frame ${frame} row ${row}`);
      const laidOut = lines.map((line) => standFor(line, line.length)).join('\n');
      expect(laidOut).toHaveLength(79);
      expect(fill(laidOut)).toBe(lines.join('\n'));
    }
  });
});

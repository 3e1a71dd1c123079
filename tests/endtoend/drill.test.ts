// The built program drills a trainee in lines and as JSON, answers coming from standard input.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

interface Told {
  readonly type: string;
  readonly kind?: string;
  readonly line?: string;
  readonly points?: number;
  readonly best?: readonly string[];
  readonly of?: number;
  readonly answers?: readonly unknown[];
}

const drill = async (data: string, options: readonly string[], input: string) =>
  runProgram(['drill', ...options], { input, env: { XDG_DATA_HOME: data } });

describe('drill', { timeout: 120_000 }, () => {
  it('should list the drills, easy ones first', async () => {
    const { code, lines } = await runProgram(['drill', '--list']);
    expect(code).toBe(0);
    expect(lines.map((line) => line.split('  ')[1])).toEqual(['easy', 'medium', 'hard']);
  });

  it('should ask, mark, explain and keep the result', async () => {
    const data = temporaryFolder();
    const wrong = await drill(data, ['loose-filter', '--json'], '1\n'.repeat(40));
    expect(wrong.code).toBe(0);
    const told = wrong.lines.map((line) => JSON.parse(line) as Told);
    const asked = told.filter(({ type }) => type === 'question-put');
    expect(asked.every((question) => !('best' in question))).toBe(true);
    const marked = told.filter(({ type }) => type === 'answer-marked');
    expect(marked).toHaveLength(asked.length);
    const best = marked.map((mark) => mark.best?.[0] ?? '');
    const again = await drill(data, ['loose-filter', '--plain'], `${best.join('\n')}\n`);
    expect(again.code).toBe(0);
    const text = again.lines.join('\n');
    expect(text).toContain('Done once before');
    expect(text).toContain('Right. LANE1_P is open');
    expect(text).toContain(`${asked.length} of ${asked.length} points`);
    const kept = readFileSync(join(data, 'pinwalk', 'drill-results.jsonl'), 'utf8').trim();
    const [first, second] = kept.split('\n').map((line) => JSON.parse(line) as Told);
    expect(second).toMatchObject({ points: asked.length, of: asked.length });
    expect(first?.points).toBeLessThan(asked.length);
  });

  it('should hold a verdict back until it is called', async () => {
    const { lines } = await drill(temporaryFolder(), ['loose-filter', '--plain'], '5\n');
    const text = lines.join('\n');
    const asked = text.indexOf('What is this line?');
    expect(asked).toBeGreaterThan(0);
    expect(text.slice(0, asked)).not.toContain('5 LANE1_P: overload, open');
    expect(text).not.toContain('points\n');
  });

  it('should say what is no answer, and ask on', async () => {
    const { lines, stderr } = await drill(
      temporaryFolder(),
      ['loose-filter', '--plain'],
      'seven\n5\n',
    );
    expect(stderr).toContain('"seven" is none of the answers');
    expect(lines.join('\n')).toContain('Right.');
  });

  it.each([
    [['none-such'], 3, 'no drill of this name'],
    [[], 2, 'which drill?'],
    [['loose-filter', '--speed', 'fast'], 2, '--speed'],
  ])('should answer %j in one line', async (options, expected, says) => {
    const { code, stderr } = await drill(temporaryFolder(), options, '');
    expect(code).toBe(expected);
    expect(stderr).toContain(says);
  });
});

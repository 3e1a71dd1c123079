import { describe, expect, it } from 'vitest';
import { type GuideWorld, guide } from '../../src/commands/guide.js';
import { english } from '../../src/core/words/english.js';

const world = (
  answers: readonly string[],
  over: Partial<GuideWorld> = {},
): GuideWorld & { readonly said: string[] } => {
  const left = [...answers];
  const said: string[] = [];
  return {
    said,
    ask: async (question) => {
      said.push(question);
      const answer = left.shift();
      if (answer === undefined) throw new Error(`no answer left for ${question}`);
      return answer;
    },
    say: (line) => void said.push(line),
    ports: async () => ['/dev/ttyUSB0'],
    identify: async () => ({ proposals: [], notes: [] }),
    drivers: [{ id: 'scpi-read', title: 'SCPI' }],
    profiles: [{ id: 'demo', title: 'Demo connector' }],
    ...over,
  };
};

describe('guided start', () => {
  it('should lead to the virtual bench without a meter', async () => {
    const told = world(['2', '1']);
    expect(await guide({}, told, english.guide)).toEqual({ link: 'virtual:demo', profile: 'demo' });
    expect(told.said.at(-1)).toContain('pinwalk walk --link virtual:demo --profile demo');
  });

  it('should take the driver that identification proposes, with its link', async () => {
    const link = 'serial:/dev/ttyUSB0?baud=2400';
    const proposals = [{ driver: 'stream-value-unit', link, evidence: 'lines like "389.6 ohm"' }];
    const told = world(['1', '1', '1'], { identify: async () => ({ proposals, notes: [] }) });
    expect(await guide({}, told, english.guide)).toEqual({
      link,
      driver: 'stream-value-unit',
      profile: 'demo',
    });
  });

  it('should offer every driver when nothing answers', async () => {
    const told = world(['1', '1', '1']);
    const guided = await guide({}, told, english.guide);
    expect(guided.driver).toBe('scpi-read');
    expect(told.said).toContain(english.guide.nothingAnswers);
  });

  it('should ask again after an answer that is none, and show it cleaned', async () => {
    const told = world(['9', '\u001b[2J', '2', 'x', '1']);
    await guide({}, told, english.guide);
    const refusals = told.said.filter((line) => line.includes('is not one of'));
    expect(refusals).toHaveLength(3);
    expect(refusals.join('')).not.toContain('\u001b');
  });

  it('should say what is wrong with a typed link and ask again', async () => {
    const told = world(['3', 'tcp:/nowhere', 'stdin:', '2', './mine.json']);
    expect(await guide({}, told, english.guide)).toEqual({
      link: 'stdin:',
      profile: './mine.json',
    });
    expect(told.said.some((line) => line.includes('tcp://host:port'))).toBe(true);
  });

  it('should not ask for what it knows', async () => {
    const told = world(['1']);
    const known = { link: 'tcp://192.0.2.7:5025', driver: 'scpi-read' };
    expect(await guide(known, told, english.guide)).toEqual({ ...known, profile: 'demo' });
  });
});

// Walks every shipped drill: it is sound, it plays the session it was made for, and everything it asks can be answered.
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planDrill } from '../../src/core/drill/plan-drill.js';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { loadDrill } from '../../src/store/load-drill.js';

const folder = fileURLToPath(new URL('../../recordings/drills/', import.meta.url));
const ids = readdirSync(folder)
  .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
  .map((name) => name.slice(0, -'.json'.length));

describe('the shipped drills', () => {
  it('should go from easy to hard', () => {
    const levels = ids.map((id) => loadDrill(id, [folder]).content.level).sort();
    expect(levels).toEqual([1, 2, 3]);
  });

  it.each(ids)('should be sound: %s', (id) => {
    expect(checkFile(`${folder}${id}.json`)).toMatchObject({ kind: 'drill', problems: [] });
    const { content, sessionPath } = loadDrill(id, [folder]);
    expect(content.provenance.how).toContain('virtual bench');
    const events = [...readSession(sessionPath)];
    const [opened] = events;
    if (opened?.type !== 'session-opened') throw new Error('no session');
    const questions = planDrill(content, opened, events);
    expect(questions.length).toBeGreaterThanOrEqual(6);
    expect(new Set(questions.map(({ kind }) => kind))).toEqual(new Set(content.asks));
  });
});

import { describe, expect, it } from 'vitest';
import { askIntake } from '../../src/commands/intake-form.js';
import { type Given, nothingGiven } from '../../src/core/job/given.js';
import { english } from '../../src/core/words/english.js';
import { FileError } from '../../src/store/file-error.js';
import { loadProfile } from '../../src/store/load-definitions.js';
import { asked } from './asked.js';

const { content: demo } = loadProfile('demo');
const attach = (file: string): Given['photos'][number] => {
  if (file === 'nowhere') throw new FileError(file, [{ path: [], what: 'none', fix: 'check' }]);
  return { file, sha256: 'a'.repeat(64), bytes: 1 };
};
const form = async (known: Given, ...answers: string[]) => {
  const terminal = asked(...answers);
  const given = await askIntake(known, demo, { ...terminal, attach }, english.job);
  return { given, said: terminal.said };
};

describe('the questions of intake', () => {
  it('takes what is answered and leaves out what is not', async () => {
    const observations = ['y', 'n', '', '', '', '', '', '', ''];
    const { given } = await form(
      nothingGiven,
      ...['T-1', '', 'black', '', '', 'y'],
      ...observations,
      ...['a.jpg', ''],
    );
    expect(given.fields).toEqual({ ticket: 'T-1', symptom: 'black', dataMatters: 'yes' });
    expect(given.observed).toEqual({ lamp: 'yes', picture: 'no' });
    expect(given.photos.map(({ file }) => file)).toEqual(['a.jpg']);
  });

  it('asks for nothing that is known', async () => {
    const known: Given = {
      fields: { ticket: 'T-1', device: 'd', symptom: 's', history: 'h', seen: 'x' },
      photos: [],
      observed: Object.fromEntries(Object.keys(demo.observations ?? {}).map((o) => [o, 'no'])),
    };
    const { given, said } = await form(known, 'n', '');
    expect(given.fields).toEqual({ dataMatters: 'no' });
    expect(said.some((line) => line.startsWith(english.job.form.ask.ticket))).toBe(false);
  });

  it('leaves out all that follows at a dash, and keeps what came before', async () => {
    const { given } = await form(nothingGiven, 'T-1', '-');
    expect(given).toEqual({ fields: { ticket: 'T-1' }, photos: [], observed: {} });
  });

  it('goes back a question at an angle, and keeps what was answered where nothing new is said', async () => {
    const { given, said } = await form(
      nothingGiven,
      ...['<', 'T-1', 'Tablet', 'blakc', '<', 'black', '', '<', '<', '', '-'],
    );
    expect(given.fields).toEqual({ ticket: 'T-1', device: 'Tablet', symptom: 'black' });
    const questions = said.filter((line) => line.startsWith(english.job.form.ask.symptom));
    expect(questions).toHaveLength(3);
  });

  it('asks again after what is no answer, showing it cleaned, and after a photo that is not there', async () => {
    const observations = ['\u001b[2J', ...Array(9).fill('')];
    const { given, said } = await form(
      nothingGiven,
      ...['', '', '', '', '', ''],
      ...observations,
      ...['nowhere', 'b.jpg', ''],
    );
    expect(said.find((line) => line.includes('neither y nor n'))).toContain('␛[2J');
    expect(said.some((line) => line.includes('nowhere: error: none'))).toBe(true);
    expect(given.photos.map(({ file }) => file)).toEqual(['b.jpg']);
  });
});

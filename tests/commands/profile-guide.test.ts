import { describe, expect, it } from 'vitest';
import { askProfile } from '../../src/commands/profile-guide.js';
import { english } from '../../src/core/words/english.js';
import { asked } from './asked.js';

const { profile: words } = english;

describe('the questions of a new profile', () => {
  it('asks what is not told and takes what is usual', async () => {
    const terminal = asked('Sensor plug', '12', '', '', '1,12', '', '');
    expect(await askProfile({}, terminal, words)).toEqual({
      title: 'Sensor plug',
      pins: '12',
      rows: '2',
      numbering: 'row-wise',
      grounds: '1,12',
      supplies: '',
      unused: '',
      names: '',
    });
  });

  it('asks for no numbering where there is one row, and for nothing that is told', async () => {
    const terminal = asked('1', '');
    const told = { title: 'T', pins: '4', grounds: '1', names: '' };
    expect(await askProfile(told, terminal, words)).toMatchObject({ rows: '1', supplies: '' });
    expect(terminal.said).toEqual([words.askRows, words.askSupplies]);
  });

  it('asks again after a slip, and loses nothing that was answered', async () => {
    const terminal = asked(
      ...['T', 'x', '12', '', '9'],
      ...['1,13', 'one', '1,12'],
      ...['12', '2'],
      ...['GND,V A', 'a,b,c,d,e,f,g,h,i,j,k,l,m', 'GND,VA'],
    );
    expect(await askProfile({}, terminal, words)).toMatchObject({
      pins: '12',
      numbering: 'row-wise',
      grounds: '1,12',
      supplies: '2',
      names: 'GND,VA',
    });
    expect(terminal.said).toEqual(
      expect.arrayContaining([
        words.noCount('x'),
        words.noPin('13', 12),
        words.taken('12', words.ground),
        words.noName('V A'),
        words.tooManyNames(13, 12),
      ]),
    );
  });
});

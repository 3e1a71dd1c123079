// How the usual systems' players are called. None is started here.
import { describe, expect, it } from 'vitest';
import { systemPlayers } from '../../src/cues/system-players.js';

const wav = '/tmp/a b/$(x).wav';

describe('systemPlayers', () => {
  it('should try the Unix players in order, with the file as one argument', () => {
    const players = systemPlayers(undefined);
    expect(players.map(({ title }) => title)).toEqual(['afplay', 'paplay', 'pw-play', 'aplay']);
    for (const { title, command } of players) {
      const { program, args } = command(wav);
      expect([program, args.at(-1)]).toEqual([title, wav]);
    }
  });

  it('should keep the path out of what PowerShell reads as a script', () => {
    const [player, ...others] = systemPlayers('C:\\Windows');
    expect(others).toEqual([]);
    const { program, args, env } = player?.command(wav) ?? { program: '', args: [] };
    expect(program).toContain('powershell.exe');
    expect(args.join(' ')).not.toContain(wav);
    expect(args.at(-1)).toContain('$env:PINWALK_SOUND');
    expect(env).toEqual({ PINWALK_SOUND: wav });
  });
});

import { describe, expect, it } from 'vitest';
import { type Board, createBoard } from '../../src/bench/board.js';
import type { Fault } from '../../src/bench/faults.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');
const placeOf = (line: string) => profile.connector.pins.findIndex((pin) => pin.line === line);
const boardWith = (...faults: Fault[]) => createBoard({ profile, faults, seed: 11 });
const resistance = (board: Board, line: string, pressed: string | null = null) =>
  board.reads({ pinIndex: placeOf(line), pressed }, 'resistance');

/** Presses and touches for `seconds` from `fromS` on. */
const touch = (
  board: Board,
  line: string,
  fromS: number,
  seconds: number,
  pressed: string | null = null,
) => {
  board.advanceTo(fromS, { pinIndex: null, pressed: null });
  for (let s = 0; s < seconds; s += 0.01)
    board.advanceTo(fromS + s, { pinIndex: placeOf(line), pressed });
  board.advanceTo(fromS + seconds, { pinIndex: placeOf(line), pressed });
  return resistance(board, line, pressed);
};

describe('a healthy board', () => {
  const board = boardWith();

  it('should read within the limits of every expected value, in both functions', () => {
    let compared = 0;
    for (const [place, { line }] of profile.connector.pins.entries())
      for (const measure of ['resistance', 'diode'] as const) {
        const expected = profile.lines[line]?.expect?.[measure];
        const reads = board.steady(place, measure);
        if (expected === 'overload') expect(reads).toBeNull();
        if (typeof expected !== 'object') continue;
        compared += 1;
        expect(Math.abs((reads ?? 0) / expected.nominal - 1)).toBeLessThan(expected.tolerance);
      }
    expect(compared).toBeGreaterThan(50);
  });

  it('should read nothing in the air, and no volts', () => {
    expect(board.reads({ pinIndex: null, pressed: null }, 'resistance')).toBeNull();
    expect(board.reads({ pinIndex: null, pressed: null }, 'dc-volts')).toBe(0);
    expect(board.reads({ pinIndex: placeOf('PANEL_3V3'), pressed: null }, 'dc-volts')).toBe(0);
  });

  it('should differ from another board, and be the same again from the same seed', () => {
    const other = createBoard({ profile, faults: [], seed: 12 });
    const again = createBoard({ profile, faults: [], seed: 11 });
    const place = placeOf('TOUCH_INT');
    expect(again.steady(place, 'resistance')).toBe(board.steady(place, 'resistance'));
    expect(other.steady(place, 'resistance')).not.toBe(board.steady(place, 'resistance'));
  });
});

describe('contact over time', () => {
  it('should creep to the steady value within the time it tells', () => {
    const board = boardWith();
    const line = 'LANE0_P';
    const steady = board.steady(placeOf(line), 'resistance') ?? 0;
    const settled = touch(board, line, 1, board.settlesInS(placeOf(line)));
    expect(Math.abs((settled ?? 0) / steady - 1)).toBeLessThan(0.0051);
  });

  it('should start a charging supply like a short and take a second and more', () => {
    const board = boardWith();
    const line = 'PANEL_3V3';
    const steady = board.steady(placeOf(line), 'resistance') ?? 0;
    expect(resistance(board, line)).toBeLessThan(0.05 * steady);
    expect(board.settlesInS(placeOf(line))).toBeGreaterThan(1);
    expect(touch(board, line, 1, 0.3)).toBeLessThan(0.9 * steady);
    expect(touch(board, line, 1.3, 12)).toBeGreaterThan(0.995 * steady);
  });

  it('should lose its charge again in the air', () => {
    const board = boardWith();
    const line = 'PANEL_3V3';
    const charged = touch(board, line, 1, 12) ?? 0;
    board.advanceTo(60, { pinIndex: null, pressed: null });
    expect(resistance(board, line)).toBeLessThan(0.1 * charged);
  });

  it('should read below zero with charge left, until it is discharged', () => {
    const board = boardWith({ kind: 'charged', line: 'PANEL_3V3', volts: -0.2 });
    const place = placeOf('PANEL_3V3');
    expect(touch(board, 'PANEL_3V3', 1, 0.5)).toBeLessThan(-50);
    expect(board.reads({ pinIndex: place, pressed: null }, 'dc-volts')).toBeLessThan(-0.1);
    board.discharge(place);
    expect(resistance(board, 'PANEL_3V3')).toBeGreaterThan(0);
  });
});

describe('a fault', () => {
  const sound = (line: string) => boardWith().steady(placeOf(line), 'resistance') ?? 0;
  const faulty = (fault: Fault) => boardWith(fault).steady(placeOf(fault.line), 'resistance');

  it('should leave no path when a line is open', () => {
    expect(faulty({ kind: 'open', line: 'LANE0_P' })).toBeNull();
  });

  it('should still show a branch on the connector side of the break', () => {
    const near = faulty({ kind: 'open', line: 'PANEL_RESET', at: 'R18' });
    expect(near).toBe(10_000);
    expect(faulty({ kind: 'open', line: 'PLUG_DETECT', at: 'R17' })).toBeNull();
  });

  it('should open one ground pin and leave the others', () => {
    const board = boardWith({ kind: 'open', line: 'GND', pin: '13' });
    expect(board.steady(12, 'resistance')).toBeNull();
    expect(board.steady(0, 'resistance')).toBeLessThan(1);
  });

  it('should read the short and not the line', () => {
    expect(faulty({ kind: 'short', line: 'PANEL_3V3', ohms: 0.5 })).toBeCloseTo(0.5, 2);
  });

  it('should put a leak beside the line', () => {
    const line = 'LANE0_P';
    const leaky = faulty({ kind: 'leaky', line, ohms: 1000 }) ?? 0;
    expect(1 / leaky).toBeCloseTo(1 / sound(line) + 1 / 1000, 9);
    const diode = boardWith({ kind: 'leaky', line, ohms: 200 }).steady(placeOf(line), 'diode');
    expect(diode).toBeCloseTo(0.2, 9);
  });

  it('should make a leak show even where a good board shows overload', () => {
    expect(faulty({ kind: 'leaky', line: 'AUX_P', ohms: 2200 })).toBe(2200);
  });

  it('should drift by its factor', () => {
    const line = 'LANE0_P';
    expect(faulty({ kind: 'drifted', line, factor: 1.5 })).toBeCloseTo(1.5 * sound(line), 9);
  });

  it('should close a loose joint only under pressure on its own part', () => {
    const line = 'LANE1_P';
    const board = boardWith({ kind: 'loose', line, part: 'FL2' });
    expect(resistance(board, line)).toBeNull();
    expect(resistance(board, line, 'FL1')).toBeNull();
    expect(touch(board, line, 1, 5, 'FL2')).toBeCloseTo(sound(line), 0);
    expect(resistance(board, line)).toBeNull();
  });

  it('should keep a sticky joint closed for its time', () => {
    const line = 'LANE1_P';
    const board = boardWith({ kind: 'loose', line, part: 'FL2', stickyS: 0.8 });
    touch(board, line, 1, 1, 'FL2');
    expect(touch(board, line, 2, 0.5)).not.toBeNull();
    expect(touch(board, line, 2.5, 0.5)).toBeNull();
  });

  it('should open a cracked joint under pressure', () => {
    const line = 'TOUCH_INT';
    const board = boardWith({ kind: 'cracked', line, part: 'R23' });
    expect(touch(board, line, 1, 5)).toBeCloseTo(sound(line), -1);
    expect(resistance(board, line, 'R23')).toBeNull();
  });

  it('should short a bridged joint under pressure', () => {
    const line = 'TOUCH_INT';
    const board = boardWith({ kind: 'bridged', line, part: 'R23', ohms: 0.7 });
    expect(touch(board, line, 1, 5)).toBeCloseTo(sound(line), -1);
    expect(touch(board, line, 6, 1, 'R23')).toBeCloseTo(0.7, 1);
  });

  it.each([
    [{ kind: 'open', line: 'NO_SUCH' } as const, 'no line NO_SUCH'],
    [{ kind: 'loose', line: 'LANE0_P', part: 'FL9' } as const, 'no part FL9'],
    [{ kind: 'open', line: 'GND', pin: '2' } as const, 'pin 2 does not carry GND'],
    [{ kind: 'open', line: 'LANE0_P', at: 'R18' } as const, 'has no stop R18'],
  ])('should be refused where the profile has nothing like it: %j', (fault, says) => {
    expect(() => boardWith(fault)).toThrow(says);
  });
});

describe('a board whose profile expects nothing', () => {
  it('should read alike on mates, differently on others, and nothing on unused pins', () => {
    const blank = shippedProfile('blank-24');
    const board = createBoard({ profile: blank, faults: [], seed: 4 });
    const reads = (line: string) =>
      board.steady(
        blank.connector.pins.findIndex((pin) => pin.line === line),
        'resistance',
      );
    const pair = (reads('EXC_P') ?? 0) / (reads('EXC_N') ?? 1);
    expect(Math.abs(pair - 1)).toBeLessThan(0.05);
    expect(reads('LINK_TX')).not.toBeNull();
    expect(reads('LINK_TX')).not.toBe(reads('WAKE'));
    expect(reads('NC_1')).toBeNull();
  });
});

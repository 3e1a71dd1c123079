import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import { priorOf, type SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { readProfile } from '../../support/read-profile.js';
import { smallBoard } from './small-board.js';

const named = (model: SuspectModel, id: string) => {
  const found = model.suspects.filter((suspect) => suspect.id === id);
  if (found.length === 0) throw new Error(`no suspect ${id}`);
  return found;
};
const prior = (model: SuspectModel, id: string): number =>
  priorOf(model, named(model, id)[0]?.index ?? -1);

const least: Profile = {
  format: 'pinwalk-profile/1',
  id: 'least',
  title: 'Least',
  provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: {
    id: 'J1',
    pins: ['GND', 'D0_P', 'D0_N', 'GND'].map((line, i) => ({ pin: String(i + 1), line })),
  },
  lines: { GND: { kind: 'ground' }, D0_P: { kind: 'signal' }, D0_N: { kind: 'signal' } },
  parts: {
    U1: { kind: 'chip', lines: ['D0_P', 'D0_N'] },
    FL2: { kind: 'filter', lines: ['D0_P', 'D0_N'] },
    C1: { kind: 'capacitor', lines: ['D0_P', 'GND'] },
  },
};

describe('the model of a board', () => {
  it('should make up a chain from the parts where the profile has none', () => {
    const route = buildModel(least).routes.find(({ line }) => line === 'D0_P');
    expect(route?.stops.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'joint J1 pin 2',
      'branch C1',
      'joint FL2 pin side, D0_P',
      'part FL2',
      'joint FL2 far side, D0_P',
      'chip U1',
    ]);
  });

  it('should share a filter between its lines, and give each line its own way through', () => {
    const model = buildModel(least);
    const filter = named(model, 'FL2');
    expect(filter.map(({ lines }) => lines)).toEqual([['D0_P', 'D0_N'], ['D0_P'], ['D0_N']]);
    expect(model.shared.has(filter[0]?.index ?? -1)).toBe(true);
    expect(model.shared.has(filter[1]?.index ?? -1)).toBe(false);
  });

  it('should make every ground pin a route of its own', () => {
    const grounds = buildModel(least).routes.filter(({ isGround }) => isGround);
    expect(grounds.map(({ pins }) => pins)).toEqual([['1'], ['4']]);
    expect(grounds.map(({ stops }) => stops)).toEqual([
      [{ kind: 'joint', id: 'J1 pin 1' }],
      [{ kind: 'joint', id: 'J1 pin 4' }],
    ]);
  });

  it('should give a line on several pins one joint a pin before its chain', () => {
    const model = buildModel(smallBoard({ V: { chain: 'F1 U1', pins: 2 } }));
    const entries = model.routes[0]?.seats.filter(({ sits }) => sits === 'entry');
    expect(entries?.map(({ pin }) => pin)).toEqual(['1', '2']);
    expect(named(model, 'J1 pin 2')).toHaveLength(1);
  });

  it('should take a joint named in two chains for one joint', () => {
    const model = buildModel(smallBoard({ A: { chain: 'via_7 U1' }, B: { chain: 'via_7 U2' } }));
    expect(named(model, 'via 7').map(({ lines }) => lines)).toEqual([['A', 'B']]);
  });

  it('should let a press act on the joints named after a part, or next to it', () => {
    const model = buildModel(
      smallBoard({ A: { chain: 'J1_pin_1 FL1_pad_1 FL1 FL1_pad_2 via_7 FL11 U1' } }),
    );
    const acts = (id: string) => named(model, id)[0]?.pressedAt;
    expect(acts('J1 pin 1')).toEqual(['J1']);
    expect(acts('FL1 pad 2')).toEqual(['FL1']);
    expect(acts('via 7')).toEqual(['FL1', 'FL11']);
    expect(acts('FL11')).toEqual(['FL11']);
  });
});

describe('what is likely beforehand', () => {
  it('should be the profile where it tells, then what is asked for, then the default', () => {
    const profile = structuredClone(least);
    const filter = profile.parts?.FL2;
    if (filter === undefined) throw new Error('no filter');
    filter.prior = 0.09;
    const model = buildModel(profile, { priors: { chip: 0.07 } });
    expect(prior(model, 'FL2')).toBeCloseTo(0.09, 12);
    expect(prior(model, 'U1')).toBeCloseTo(0.07, 12);
    expect(prior(model, 'J1 pin 2')).toBeCloseTo(prior(buildModel(least), 'J1 pin 2'), 12);
  });

  it('should refuse a prior that is no probability', () => {
    expect(() => buildModel(least, { priors: { joint: 1.2 } })).toThrow(
      /no prior for a joint: 1.2/,
    );
  });
});

describe('a board on which everything hangs together', () => {
  it('should leave out the least likely shared faults by name, and still be weighed', () => {
    const names = Array.from({ length: 9 }, (_, i) => `FL${i + 1}`);
    const chain = names.join(' ');
    const model = buildModel(smallBoard({ A: { chain }, B: { chain } }), {
      priors: { 'part-on-line': 0 },
    });
    expect(model.leftOut.length).toBeGreaterThan(0);
    expect(model.leftOut.length).toBeLessThan(names.length);
    for (const id of model.leftOut) expect(names).toContain(id);
    expect(model.shared.size).toBe(names.length - model.leftOut.length);
  });

  it('should leave out nothing on any profile of the library, and weigh each', () => {
    const files = readdirSync('profiles').filter((file) => !file.endsWith('.schema.json'));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const { content } = readProfile(readFileSync(`profiles/${file}`, 'utf8'));
      if (content === undefined || content === null) throw new Error(`${file} does not read`);
      const model = buildModel(content);
      expect(model.leftOut).toEqual([]);
      expect(weighFaults(model, []).none).toBeGreaterThan(0.3);
    }
  });
});

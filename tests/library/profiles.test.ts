// Walks every shipped profile: schema, checks, and what the demo profile promises to show.
import { describe, expect, it } from 'vitest';
import { checkProfile } from '../../src/core/profile/check-profile.js';
import { planWalk } from '../../src/core/profile/plan.js';
import { profileIds, shippedProfile } from '../bench/support/profile-files.js';

const leastProfiles = 2;

describe('the shipped profiles', () => {
  it('should be at least two', () => {
    expect(profileIds.length).toBeGreaterThanOrEqual(leastProfiles);
    expect(profileIds).toContain('demo');
  });

  it.each(profileIds)('%s should pass every check and be named as its file', (id) => {
    const profile = shippedProfile(id);
    expect(profile.id).toBe(id);
    expect(checkProfile(profile)).toEqual([]);
    expect(profile.$schema).toBe('./profile.schema.json');
  });

  it.each(profileIds)('%s should say that it is invented', (id) => {
    const profile = shippedProfile(id);
    expect(profile.demo).toBe(true);
    expect(profile.title).toMatch(/^Demo:/u);
    expect(profile.provenance.how).toMatch(/^Invented/u);
  });

  it.each(profileIds)('%s should have two grounds or more and use every line it names', (id) => {
    const profile = shippedProfile(id);
    const walked = new Set(profile.connector.pins.map(({ line }) => line));
    const grounds = profile.connector.pins.filter(
      ({ line }) => profile.lines[line]?.kind === 'ground',
    );
    expect(grounds.length).toBeGreaterThanOrEqual(2);
    expect(Object.keys(profile.lines).filter((line) => !walked.has(line))).toEqual([]);
  });
});

describe('the demo profile', () => {
  const profile = shippedProfile('demo');
  const plan = planWalk(profile);
  const lines = Object.entries(profile.lines);

  it('should have 40 pins in two rows whose ends are grounds', () => {
    expect(plan.pins).toHaveLength(40);
    for (const row of [1, 2]) {
      const pins = plan.pins.filter((pin) => pin.row === row);
      expect(pins).toHaveLength(20);
      expect([pins.at(0)?.kind, pins.at(-1)?.kind]).toEqual(['ground', 'ground']);
    }
  });

  it('should tell how the connector lies', () => {
    expect(profile.connector).toMatchObject({
      viewed: 'receptacle',
      numbering: 'row-wise',
      endTabs: 'ground',
    });
    expect(profile.connector.pinOne).toBeTruthy();
  });

  it('should expect a value in resistance and in diode test of every line that is no ground', () => {
    const lacking = lines
      .filter(([, { kind }]) => kind !== 'ground')
      .filter(([, { expect: expected }]) => !expected?.resistance || !expected.diode)
      .map(([name]) => name);
    expect(lacking).toEqual([]);
  });

  it('should lead its pairs through filters of two lines', () => {
    const filters = Object.values(profile.parts ?? {}).filter(({ kind }) => kind === 'filter');
    expect(filters).toHaveLength(4);
    for (const { lines: through } of filters) {
      const [first = '', second = ''] = through;
      expect(through).toHaveLength(2);
      expect(profile.lines[first]?.mate).toBe(second);
      expect(profile.lines[second]?.mate).toBe(first);
    }
  });

  it('should name the same parts along the chains and in the list of parts', () => {
    const along = (name: string): string[] =>
      (profile.lines[name]?.chain ?? []).flatMap((stop) => {
        if ('part' in stop) return [stop.part];
        if ('shunt' in stop) return [stop.shunt.part];
        return 'chip' in stop ? [stop.chip] : [];
      });
    for (const [part, { lines: through }] of Object.entries(profile.parts ?? {}))
      for (const name of through) expect(along(name), `${part} on ${name}`).toContain(part);
  });

  it('should have supplies that charge, one of them a few ohms with a limit of its own', () => {
    const supplies = plan.pins.filter(({ kind }) => kind === 'supply');
    expect(supplies.length).toBeGreaterThanOrEqual(4);
    expect(supplies.every(({ charges }) => charges)).toBe(true);
    const lowest = supplies.find(
      ({ expected }) => typeof expected === 'object' && expected !== null && expected.nominal < 5,
    );
    expect(lowest?.shortLimit).toBeLessThan(1);
  });

  it('should keep every expected value clear of the line its limits call shorted', () => {
    for (const { pin, kind, expected, shortLimit } of plan.pins)
      if (kind !== 'ground' && typeof expected === 'object' && expected !== null)
        expect(expected.low, `pin ${pin}`).toBeGreaterThan(shortLimit);
  });

  it('should have lines that show overload when they are good', () => {
    const silent = lines.filter(([, line]) => line.expect?.resistance === 'overload');
    expect(silent.map(([, { kind }]) => kind).sort()).toEqual([
      'signal',
      'signal',
      'unused',
      'unused',
    ]);
  });

  it('should lead from symptoms to groups that it has', () => {
    const groups = new Set(Object.keys(profile.groups ?? {}));
    const symptoms = profile.symptoms ?? [];
    expect(symptoms.length).toBeGreaterThanOrEqual(4);
    for (const { id, walkFirst, leaveAlone = [] } of symptoms)
      for (const group of [...walkFirst, ...leaveAlone])
        expect(groups.has(group), `${id}: ${group}`).toBe(true);
  });
});

describe('the profile without expected values', () => {
  const profile = shippedProfile('blank-24');

  it('should expect nothing', () => {
    expect(profile.connector.pins).toHaveLength(24);
    expect(Object.values(profile.lines).filter((line) => line.expect !== undefined)).toEqual([]);
  });
});

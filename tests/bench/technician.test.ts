import { describe, expect, it } from 'vitest';
import { listenAndWalk } from '../../src/bench/attentive.js';
import { steadyPace } from '../../src/bench/pace.js';
import type { WalkEvent } from '../../src/core/events.js';
import { type Contact, judged, rehearse, type Sight } from './support/rehearsal.js';

type Say = (event: WalkEvent) => void;

/** A program that has checked the ground by the second touch and agrees with each pin after half a second. */
const agreeable = () => {
  let grounds = 0;
  let told: string | null = null;
  return (see: Sight, say: Say) => {
    if (see.pin === null) {
      told = null;
      return;
    }
    if (see.forS < 0.5 || told === see.pin) return;
    told = see.pin;
    if (grounds < 2) {
      grounds += 1;
      const which = grounds === 1 ? 1 : 2;
      say({ type: 'ground-touched', t: see.nowS, value: 0.2, which });
      if (which === 2) say({ type: 'ground-checked', t: see.nowS, outcome: 'good' });
      return;
    }
    say(judged(see.pin, see.nowS));
  };
};

const attentive = (
  program: (see: Sight, say: Say) => void,
  more: Partial<Parameters<typeof rehearse>[0]> = {},
) =>
  rehearse({
    work: (body) => listenAndWalk(body, 'ground-taps'),
    pace: steadyPace,
    seconds: 30,
    program,
    ...more,
  });

const captured = (t: number): WalkEvent => ({
  type: 'touch-captured',
  t,
  touch: 1,
  value: 388,
  standardUncertainty: 1,
  residualSquares: 0,
  readings: 5,
  resolution: 0.1,
  from: t - 0.5,
  to: t,
});

const pinsOf = (contacts: readonly Contact[]) => contacts.map(({ pin }) => pin);

describe('a technician who hears', () => {
  it('should touch two grounds and then walk the pins in order as they are agreed', () => {
    const { contacts } = attentive(agreeable());
    expect(pinsOf(contacts).slice(0, 9)).toEqual(['1', '4', '1', '2', '3', '4', '5', '6', '7']);
  });

  it('should lift for half a second and more between pins', () => {
    const { contacts } = attentive(agreeable());
    const gaps = contacts.slice(1).map(({ fromS }, i) => fromS - (contacts[i]?.toS ?? 0));
    expect(gaps.length).toBeGreaterThan(8);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(0.499);
  });

  it('should react to a word only after a while', () => {
    const { contacts } = attentive(agreeable());
    // Agreed half a second after landing; people answer a sound in 0.2 to 0.5 s.
    for (const { fromS, toS } of contacts.slice(2, -1)) {
      expect(toS - fromS).toBeGreaterThan(0.69);
      expect(toS - fromS).toBeLessThan(1.03);
    }
  });

  it('should touch a pin again until it is agreed', () => {
    const program = agreeable();
    let touches = 0;
    let counted = false;
    const { contacts } = attentive((see, say) => {
      if (see.pin !== '3') {
        counted = false;
        program(see, say);
      } else if (see.forS >= 0.5 && !counted) {
        counted = true;
        touches += 1;
        say(judged('3', see.nowS, touches === 3));
      }
    });
    expect(pinsOf(contacts).filter((pin) => pin === '3')).toHaveLength(3);
    expect(pinsOf(contacts)).toContain('5');
  });

  it('should touch a pin again when nothing is said for long', () => {
    const program = agreeable();
    const { contacts } = attentive((see, say) => see.pin !== '2' && program(see, say), {
      seconds: 40,
    });
    expect(pinsOf(contacts).filter((pin) => pin === '2').length).toBeGreaterThanOrEqual(2);
    expect(pinsOf(contacts)).not.toContain('3');
  });

  it('should take a question that comes when it has left a pin for one about that pin', () => {
    const program = agreeable();
    let beenAtTwo = false;
    let asked = false;
    const { contacts } = attentive((see, say) => {
      // Of pin 3 nothing is said.
      if (see.pin !== '3') program(see, say);
      beenAtTwo ||= see.pin === '2';
      if (!beenAtTwo || asked || see.pin !== null || see.forS < 0.1) return;
      asked = true;
      say(captured(see.nowS));
      say({ type: 'question-asked', t: see.nowS, question: 'same-or-next', pin: '3' });
    });
    expect(asked).toBe(true);
    const { fromS = 0, toS = 0 } = contacts.find(({ pin }) => pin === '3') ?? {};
    expect(toS - fromS).toBeGreaterThan(1);
  });

  const openAtThree = () => {
    const program = agreeable();
    let asked = false;
    return (see: Sight, say: Say) => {
      if (see.pin === '3') {
        if (see.forS >= 2.5 && !asked)
          say({ type: 'question-asked', t: see.nowS, question: 'open', pin: '3' });
        asked ||= see.forS >= 2.5;
      } else if (!asked) program(see, say);
    };
  };

  it('should answer an open line with two taps on ground', () => {
    const { contacts } = attentive(openAtThree(), { shows: (pin) => pin !== '3' });
    const at = pinsOf(contacts).indexOf('3');
    const [visit, first, second] = contacts.slice(at);
    expect((visit?.toS ?? 0) - (visit?.fromS ?? 0)).toBeGreaterThan(2.5 + 0.6);
    expect([first?.pin, second?.pin]).toEqual(['1', '1']);
    for (const tap of [first, second]) {
      const longS = (tap?.toS ?? 0) - (tap?.fromS ?? 0);
      expect(longS).toBeGreaterThan(0.3);
      expect(longS).toBeLessThan(0.8);
    }
    const gapS = (second?.fromS ?? 0) - (first?.toS ?? 0);
    expect(gapS).toBeGreaterThan(0.3);
    expect(gapS).toBeLessThan(0.8);
  });

  it('should forget a question that a new start of the program does not remember', () => {
    const program = openAtThree();
    let resumed = false;
    const { contacts } = attentive(
      (see, say) => {
        program(see, say);
        if (resumed || see.pin !== '1' || see.nowS < 8) return;
        resumed = true;
        say({
          type: 'session-resumed',
          t: see.nowS,
          program: 'test',
          tornBytes: 0,
          wallTime: '',
          zone: '',
        });
      },
      { shows: (pin) => pin !== '3', seconds: 60 },
    );
    const pins = pinsOf(contacts);
    expect(resumed).toBe(true);
    expect(pins.slice(pins.indexOf('3'), pins.indexOf('3') + 3)).toEqual(['3', '1', '1']);
    const afterwards = pins.slice(pins.indexOf('3') + 3);
    expect(afterwards.length).toBeGreaterThan(1);
    expect(new Set(afterwards)).toEqual(new Set(['3']));
  });

  it('should hold its taps for two and a half readings of a slow meter', () => {
    const { contacts } = attentive(openAtThree(), {
      shows: (pin) => pin !== '3',
      readingsPerS: 2.5,
    });
    const at = pinsOf(contacts).indexOf('3');
    for (const tap of contacts.slice(at + 1, at + 3)) {
      expect(tap.pin).toBe('1');
      expect(tap.toS - tap.fromS).toBeGreaterThanOrEqual(1);
    }
  });

  it('should answer with a key instead, where it has keys', () => {
    const { acts, contacts } = attentive(openAtThree(), {
      work: (body) => listenAndWalk(body, 'key'),
      shows: (pin) => pin !== '3',
    });
    expect(acts[0]).toEqual({ act: 'open' });
    expect(pinsOf(contacts).slice(5).includes('1')).toBe(false);
  });

  it('should not call a line open that shows a number', () => {
    const { acts, contacts } = attentive(openAtThree(), {
      work: (body) => listenAndWalk(body, 'key'),
    });
    expect(acts).toEqual([]);
    expect(pinsOf(contacts).filter((pin) => pin === '3').length).toBeGreaterThan(1);
  });

  it('should not answer for a pin it had not reached yet, and give it time to read', () => {
    const program = agreeable();
    let asked = false;
    const { contacts } = attentive((see, say) => {
      // Asked in the air on the way to pin 3, agreed two seconds after the landing.
      if (see.nowS > 8 && see.pin === null && !asked) {
        asked = true;
        say({ type: 'question-asked', t: see.nowS, question: 'open', pin: '4' });
      }
      if (see.pin !== '4' || !asked) program(see, say);
      else if (see.forS > 2 && see.forS < 2.02) say(judged('4', see.nowS));
    });
    const at = pinsOf(contacts).lastIndexOf('4');
    expect(pinsOf(contacts).slice(at, at + 2)).toEqual(['4', '5']);
    expect((contacts[at]?.toS ?? 0) - (contacts[at]?.fromS ?? 0)).toBeGreaterThan(2);
  });

  it('should go where the walk is sent', () => {
    const program = agreeable();
    let sent = false;
    const { contacts } = attentive((see, say) => {
      if (see.pin === '6' && see.forS > 0.3 && !sent) {
        sent = true;
        say({ type: 'pin-reached', t: see.nowS, pin: '3', line: 'LANE0_N' });
      }
      program(see, say);
    });
    const after = pinsOf(contacts).slice(pinsOf(contacts).indexOf('6') + 1);
    expect(after.slice(0, 3)).toEqual(['3', '4', '5']);
  });

  it('should begin at the pin a resumed walk stands at', () => {
    const program = agreeable();
    let said = false;
    const { contacts } = attentive((see, say) => {
      if (!said) say({ type: 'walk-continued', t: see.nowS, pin: '17' });
      said = true;
      program(see, say);
    });
    expect(contacts[0]?.pin).toBe('17');
  });

  it('should begin at the pin it is asked about, when it hears no beginning, and answer', () => {
    let asked = false;
    const { contacts } = attentive(
      (see, say) => {
        if (see.nowS <= 2.5 || asked) return;
        asked = true;
        say({ type: 'question-asked', t: see.nowS, question: 'open', pin: '8' });
      },
      { shows: (pin) => pin !== '8' },
    );
    expect(pinsOf(contacts).slice(0, 3)).toEqual(['8', '1', '1']);
  });

  it('should wait in the air while the walk is paused, and touch the same pin after', () => {
    const program = agreeable();
    let pausedS: number | null = null;
    let continued = false;
    const { contacts } = attentive((see, say) => {
      if (see.pin === '5' && pausedS === null) {
        pausedS = see.nowS;
        say({ type: 'walk-paused', t: see.nowS, reason: 'link-lost' });
      }
      if (pausedS !== null && see.nowS > pausedS + 6 && !continued) {
        continued = true;
        say({ type: 'walk-continued', t: see.nowS, pin: '5' });
      }
      if (pausedS === null || continued) program(see, say);
    });
    const at = pinsOf(contacts).indexOf('5');
    const [before, after] = contacts.slice(at);
    expect(after?.pin).toBe('5');
    expect((after?.fromS ?? 0) - (before?.toS ?? 0)).toBeGreaterThan(5);
  });

  it.each([
    ['negative', ['2'], 0],
    ['flag-hold', [], 1],
    ['wrong-function', [], 1],
  ] as const)('should set right what holds the walk: %s', (reason, discharged, resets) => {
    const program = agreeable();
    let held = false;
    const outcome = attentive((see, say) => {
      if (see.pin === '2' && see.forS > 0.3 && !held) {
        held = true;
        say({ type: 'walk-held', t: see.nowS, reason, detail: '' });
        return;
      }
      program(see, say);
    });
    expect(outcome.discharged).toEqual(discharged);
    expect(outcome.resets).toBe(resets);
    expect(pinsOf(outcome.contacts).filter((pin) => pin === '2')).toHaveLength(2);
  });

  it('should pass over a ground that shows nothing', () => {
    const program = agreeable();
    const { contacts } = attentive((see, say) => see.pin !== '1' && program(see, say), {
      shows: (pin) => pin !== '1',
    });
    expect(pinsOf(contacts).slice(0, 4)).toEqual(['1', '4', '7', '1']);
  });
});

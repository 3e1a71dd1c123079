import { describe, expect, it } from 'vitest';
import { selectStatus } from '../../../src/core/select/status.js';
import { emptyTrace } from '../../../src/core/select/trace.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { Banner } from '../../../src/ui/parts/banner.js';
import { Ground } from '../../../src/ui/parts/ground.js';
import { Header } from '../../../src/ui/parts/header.js';
import { KeyLine } from '../../../src/ui/parts/key-line.js';
import { MeasureRule } from '../../../src/ui/parts/measure-rule.js';
import { Reading } from '../../../src/ui/parts/reading.js';
import { Said } from '../../../src/ui/parts/said.js';
import { Scale } from '../../../src/ui/parts/scale.js';
import { Side } from '../../../src/ui/parts/side.js';
import { Status } from '../../../src/ui/parts/status.js';
import { Strip } from '../../../src/ui/parts/strip.js';
import { SubjectLine } from '../../../src/ui/parts/subject-line.js';
import { Tally } from '../../../src/ui/parts/tally.js';
import { steppedBench } from '../support/bench-session.js';
import { show, showStyled, surroundings } from '../support/show.js';

const at = (done: (state: WalkState) => boolean, scenario: 'healthy' | 'demo' = 'healthy') => {
  const { session, until } = steppedBench({ scenario });
  if (!until(done)) throw new Error('the walk did not come to that');
  return session.state;
};
const begun = steppedBench().session.state;
const resting = at(({ cursor }) => cursor === 2);
const waiting = at(({ cursor, contact }) => cursor === 2 && contact.rest === null);
const asking = at(({ question }) => question?.question === 'open', 'demo');
const inverse = '\u001b[7m';

describe('header', () => {
  it('should name the connector, the place and that readings are simulated', () => {
    const [line] = show(<Header state={waiting} width={80} />);
    expect(line).toContain('J7  Display connector, 40 pins');
    expect(line).toContain('3 of 40');
    expect(line).toMatch(/SIMULATED▌$/u);
    expect(line).toHaveLength(80);
  });

  it('should not say simulated of a real meter', () => {
    const [line] = show(<Header state={waiting} width={80} />, { simulated: false });
    expect(line).not.toContain('SIMULATED');
  });

  it('should show hostile titles as what they are', () => {
    const profile = {
      ...surroundings.profile,
      connector: { ...surroundings.profile?.connector, title: 'a\u001b[2Jb\u202ec' },
    } as typeof surroundings.profile;
    const [line] = show(<Header state={waiting} width={80} />, { profile });
    expect(line).toContain('a\u241b[2Jb\ufffdc');
  });
});

describe('measure rule', () => {
  it('should say function, range and which lead walks', () => {
    const [line] = show(<MeasureRule state={resting} width={80} />);
    expect(line).toContain('resistance to ground · range 600 Ω · red lead walks, black on ground');
    expect(line).toHaveLength(80);
  });
});

describe('strip', () => {
  it('should show both rows with the place by more than colour', () => {
    const [first, second] = show(<Strip state={waiting} width={80} rows={2} />);
    expect(first).toContain('row 1   ━  ━  3  ·');
    expect(second?.match(/·/gu)).toHaveLength(20);
    expect(showStyled(<Strip state={waiting} width={80} rows={2} />)).toContain(`${inverse} 3 `);
  });

  it('should show the row of the place where one row has to do', () => {
    const later = at(({ cursor, contact }) => cursor === 24 && contact.rest === null);
    const [only, ...rest] = show(<Strip state={later} width={80} rows={1} />);
    expect(only).toContain('row 2');
    expect(rest).toEqual([]);
  });
});

describe('line under the probe', () => {
  it('should name the line, and what comes after the lift', () => {
    const [line] = show(<SubjectLine state={resting} width={80} />);
    expect(line).toContain('LANE0_P  Picture data 0, positive');
    expect(line).toContain('lift → next 3 LANE0_N');
  });

  it('should ask for the repeat touch of what is not normal', () => {
    const state = at(
      (now) => now.stage === 'walking' && now.alignment[0]?.stage === 'confirming',
      'demo',
    );
    const [line] = show(<SubjectLine state={state} width={80} />);
    expect(line).toContain('touch it again to confirm, or n to take it');
  });
});

describe('reading', () => {
  it('should draw pin and reading five or ten rows high', () => {
    expect(show(<Reading state={resting} width={80} large={false} />)).toHaveLength(5);
    const large = show(<Reading state={resting} width={120} large />);
    expect(large).toHaveLength(10);
    expect(large.every((row) => row.length <= 120)).toBe(true);
  });

  it('should not move when the digits change', () => {
    const width = (value: number): number => {
      const reading = { t: 1, function: 'resistance', value, resolution: 0.1 } as const;
      const rows = show(<Reading state={{ ...waiting, reading }} width={80} large={false} />);
      return Math.max(...rows.map((row) => row.length));
    };
    expect(width(111.1)).toBe(width(888.8));
  });

  it('should say overload when nothing is read', () => {
    const rows = show(<Reading state={asking} width={80} large={false} />);
    expect(rows[1]).toContain('██    ██ ██');
  });

  it('should write a long name of a pin as text', () => {
    const pins = waiting.plan.pins.map((pin) => ({ ...pin, pin: `CONTACT-${pin.pin}` }));
    const state = { ...waiting, plan: { ...waiting.plan, pins } };
    expect(show(<Reading state={state} width={80} large={false} />).join('\n')).toContain(
      'CONTACT-3',
    );
  });
});

describe('status and scale', () => {
  it('should say the verdict in large letters', () => {
    const rows = show(<Status state={resting} trouble={null} width={44} />);
    expect(rows).toEqual([
      ' █▄ █ ▄▀▀▄ █▀▀▄ █▄ ▄█ ▄▀▀▄ █',
      ' █▀▄█ █  █ █▄▄▀ █ █ █ █▄▄█ █',
      ' █ ▀█ ▀▄▄▀ █ ▀▄ █   █ █  █ █▄▄▄',
    ]);
  });

  it('should place the reading between its limits', () => {
    const [said, rail, limits] = show(<Scale state={resting} width={34} />);
    expect(said).toMatch(/^expected 388 Ω +-?\+?\d\.\d %$/u);
    expect(rail).toMatch(/┃━*●━*┃/u);
    expect(limits).toContain('349.2 Ω');
  });

  it('should fill the word as the touch settles, also without colour', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until((state) => selectStatus(state, null).kind === 'settling');
    expect(show(<Status state={session.state} trouble={null} width={44} />).join('')).toContain(
      '░',
    );
  });
});

describe('what must not be missed', () => {
  const question = selectStatus(asking, null);

  it('should ask in large letters, with a frame and the answers', () => {
    const rows = show(<Banner status={question} width={80} rows={9} />);
    expect(rows).toHaveLength(9);
    expect(rows[0]).toMatch(/^ █▀+█$/u);
    expect(rows[8]).toMatch(/^ █▄+█$/u);
    const text = rows.join('\n');
    expect(text).toContain('Nothing is read at pin 5. Is the line open?');
    expect(text).toContain('Answer "o", or tap ground twice.');
  });

  it('should ask in the little room of a small terminal', () => {
    const rows = show(<Banner status={question} width={40} rows={6} />);
    expect(rows).toHaveLength(6);
    expect(rows.join('\n')).toContain('5 OPEN?');
    expect(rows.every((row) => row.length <= 40)).toBe(true);
  });

  it('should name the key that answers, whatever it is', () => {
    const keys = keyMapWith({ open: ['f5'] });
    expect(show(<Banner status={question} width={80} rows={9} />, { keys }).join('\n')).toContain(
      'Answer "f5"',
    );
  });

  it.each([
    [{ ...begun, paused: 'asked' as const }, null, '"p" to go on.'],
    [{ ...begun, paused: 'link-lost' as const }, null, 'The meter is gone.'],
    [
      { ...begun, hold: { reason: 'flag-hold' as const, detail: 'hold is on' } },
      null,
      'hold is on.',
    ],
    [begun, 'no space left on the disk', 'no space left on the disk'],
  ])('should say why nothing is judged', (state, trouble, words) => {
    const rows = show(<Banner status={selectStatus(state, trouble)} width={80} rows={9} />);
    expect(rows.join('\n')).toContain(words);
  });

  it('should be nothing at all when there is nothing to say', () => {
    expect(show(<Banner status={selectStatus(waiting, null)} width={80} rows={9} />)).toEqual(['']);
  });
});

describe('ground check', () => {
  it('should say what to touch, where pin 1 is and what to do first', () => {
    const text = show(<Ground state={begun} width={80} rows={20} />).join('\n');
    expect(text).toContain('ground 1 of 2: touch a ground pin');
    expect(text).toContain('pin 1: White triangle');
    for (const caution of [
      'Take out the battery pack',
      'Measure residual volts',
      'insulated tool',
    ]) {
      expect(text).toContain(caution);
    }
  });

  it('should show whole cautions and say how many are left', () => {
    const rows = show(<Ground state={begun} width={80} rows={9} />);
    expect(rows).toHaveLength(9);
    expect(rows.at(-1)).toContain('and 4 more');
  });
});

describe('tally', () => {
  it('should count the verdicts and name the last one', () => {
    const last = { t: 1, pin: '2', verdict: 'normal' } as const;
    const [line] = show(<Tally state={waiting} last={last} width={80} />);
    expect(line).toMatch(/^ ━ 2 normal {2}38 to go/u);
    expect(line).toMatch(/last 2 LANE0_P \d+\.\d Ω ━ normal$/u);
  });

  it('should rather shorten the last verdict than the tally', () => {
    const last = { t: 1, pin: '2', verdict: 'normal' } as const;
    const [line] = show(<Tally state={waiting} last={last} width={40} />);
    expect(line).toContain('38 to go');
    expect(line).toMatch(/last 2 ━ normal$/u);
  });
});

describe('key line', () => {
  const keyLine = (state: WalkState, width: number): string =>
    show(<KeyLine state={state} width={width} />)[0] ?? '';

  it('should show the keys of the walk', () => {
    const line = keyLine(waiting, 80);
    for (const words of ['o open', 'n next', 'b back', 's skip', 'r retake', '? keys', 'q quit']) {
      expect(line).toContain(words);
    }
  });

  it('should put the key that is asked for in front, never by colour alone', () => {
    expect(keyLine(asking, 80)).toContain('▐o open▌');
    expect(keyLine({ ...waiting, paused: 'asked' }, 80)).toContain('▐p go on▌');
  });

  it('should keep the way out in sight on a narrow screen', () => {
    const line = keyLine(waiting, 40);
    expect(line.length).toBeLessThanOrEqual(40);
    expect(line).toContain('o open');
    expect(line).toContain('q quit');
  });

  it('should show remapped keys', () => {
    const keys = keyMapWith({ open: ['f5'], next: ['pagedown'] });
    const [line] = show(<KeyLine state={waiting} width={80} />, { keys });
    expect(line).toContain('f5 open');
    expect(line).toContain('pagedown next');
  });
});

describe('line of words', () => {
  const snapshot = { state: waiting, trouble: null, trace: emptyTrace, said: null, replay: null };
  const said = (given: Partial<Parameters<typeof Said>[0]['snapshot']>): string =>
    show(<Said snapshot={{ ...snapshot, mode: { mode: 'walk' }, ...given }} width={80} />)[0] ?? '';

  it('should ask before it leaves, in one line', () => {
    const line = said({ mode: { mode: 'leaving' } });
    expect(line).toContain('"q" again leaves, any other key stays.');
    expect(line).not.toContain('…');
  });

  it('should show what is typed and what was wrong', () => {
    expect(said({ mode: { mode: 'go-to', text: '17', wrong: null } })).toContain('Go to pin▌ 17▁');
    expect(said({ mode: { mode: 'go-to', text: '', wrong: '99' } })).toContain('no pin "99"');
    expect(said({ mode: { mode: 'note', text: 'dull joint', pin: '5' } })).toContain(
      'Note at pin 5▌ dull joint▁',
    );
  });

  it('should mark what is urgent by more than colour', () => {
    const text = 'Realigned';
    expect(said({ said: { text, t: 0, urgent: true } })).toBe('▐Realigned▌');
    expect(said({ said: { text, t: 0, urgent: false } })).toBe(' Realigned');
  });
});

describe('list at the right', () => {
  it('should list what is not normal above the latest pins', () => {
    const state = at(({ cursor, contact }) => cursor === 8 && contact.rest === null, 'demo');
    const rows = show(<Side state={state} width={40} rows={14} />);
    const text = rows.join('\n');
    expect(text).toMatch(/Not normal[\s\S]*5 {4}LANE1_P +overload {2}open/u);
    expect(text).toMatch(/Latest[\s\S]*━ 8[\s\S]*━ 7/u);
    expect(rows.every((row) => row.length <= 40)).toBe(true);
  });
});

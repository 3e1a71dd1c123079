// Which of two boards the probe belongs on is plain on an 80-column screen.
import { describe, expect, it } from 'vitest';
import { Status } from '../../../src/ui/parts/status.js';
import { SubjectLine } from '../../../src/ui/parts/subject-line.js';
import { ohms, tellStory } from '../../support/walk-story.js';
import { show } from '../support/show.js';

const begin = () =>
  tellStory({
    lines: [
      ['GND', { kind: 'ground' }],
      ['DATA', ohms(500)],
    ],
    donor: 'beside',
  });

describe('the screen of a walk with a donor beside', () => {
  it('should name the board the next touch belongs on', () => {
    const onDonor = show(<SubjectLine state={begin().state} width={80} />).join('');
    expect(onDonor).toContain('DONOR');
    expect(onDonor).toContain('next patient 1');
    const { state } = begin().touch(0.2, 1.2).lift(1.1);
    const onPatient = show(<SubjectLine state={state} width={80} />).join('');
    expect(onPatient).toContain('PATIENT');
    expect(onPatient).toContain('next donor 2');
  });

  it('should write it large while a touch is waited for', () => {
    const { state } = begin().touch(0.2, 1.2).lift(1.1);
    const large = show(<Status state={state} trouble={null} width={44} />);
    const other = show(<Status state={begin().air(0.5).state} trouble={null} width={44} />);
    expect(large.join('').trim()).not.toBe('');
    expect(large).not.toEqual(other);
  });

  it('should name the pin that the technician is called back to, and nothing else', () => {
    const story = [0.2, 0.2, 9000, 1500].reduce(
      (walk, value) => walk.touch(value, 1.2).lift(1.5),
      tellStory({
        lines: [
          ['GND', { kind: 'ground' }],
          ['DATA', { kind: 'signal' }],
          ['CLOCK', { kind: 'signal' }],
        ],
        donor: 'beside',
        noise: 0.0004,
      }),
    );
    expect(story.state.question).toMatchObject({ question: 'go-back', pin: 'donor 1' });
    const line = show(<SubjectLine state={story.state} width={80} />).join('');
    expect(line).toContain('DONOR');
    expect(line).toContain('GND');
    expect(line).toContain('next patient 1');
    expect(line).not.toContain('touch it again');
  });
});

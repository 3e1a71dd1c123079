// Tells what a rerun comes to: as objects, or in words.
import type { EventOf, Numbered, WalkEvent } from '../core/events.js';
import { jsonLine } from '../core/json-line.js';
import { foldStored, openStored } from '../core/walk/fold-stored.js';
import type { WalkState } from '../core/walk/state.js';
import { describe } from '../core/words/describe.js';
import { describePress, describeTrace } from '../core/words/describe-press.js';
import { english } from '../core/words/english.js';
import { sayMany } from './say.js';

interface RerunForm {
  readonly json?: boolean;
  readonly readings?: boolean;
}

export interface RerunTeller {
  event(event: WalkEvent): void;
  told(event: Numbered, state: WalkState): void;
  press(judged: EventOf<'press-judged'>): void;
  traced(traced: EventOf<'press-traced'>): void;
  difference(judged: EventOf<'pin-judged'>, before: string): void;
  summary(changed: number): void;
  end(): void;
}

export const createRerunTeller = ({ json, readings }: RerunForm): RerunTeller => {
  let seq = 0;
  let state: WalkState | null = null;
  const { line: write, end } = sayMany();
  const told = (event: Numbered, after: WalkState): void => {
    if (json) {
      if (readings || event.type !== 'reading-taken') write(jsonLine(event));
      return;
    }
    const line = describe(event, after, english);
    if (line !== null) write(line);
    if (event.type === 'session-opened' && event.accuracy.from === 'assumed') {
      write(english.assumedAccuracy);
    }
  };
  return {
    told,
    event(event) {
      if (!json) {
        state =
          event.type === 'session-opened'
            ? openStored(event)
            : foldStored(state as WalkState, event);
      }
      told({ seq, ...event }, state as WalkState);
      seq += 1;
    },
    traced(traced) {
      write(json ? jsonLine({ seq, ...traced }) : describeTrace(traced, english));
      seq += 1;
    },
    press(judged) {
      write(json ? jsonLine({ seq, ...judged }) : describePress(judged, english));
    },
    difference(judged, before) {
      const { pin, line, verdict } = judged;
      write(
        json
          ? jsonLine({ ...judged, type: 'verdict-changed', before })
          : english.verdictChanged(
              pin,
              line,
              english.verdict[before as typeof verdict],
              english.verdict[verdict],
            ),
      );
    },
    summary(changed) {
      if (!json) write(english.verdictsChanged(changed));
    },
    end,
  };
};

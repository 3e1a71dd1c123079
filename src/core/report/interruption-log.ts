// Stretches in which nothing could be measured or nothing was: the link gone, the meter silent, readings that
// could not be used, a pause, the session left. Each with its beginning, its end and the pin the walk stood at.
import type { EventOf, HoldReason, Numbered } from '../events.js';
import type { InterruptionKind } from '../words/report-words-technical.js';

export interface Interruption {
  readonly kind: InterruptionKind;
  readonly from: number;
  /** Null where it was never over. */
  readonly to: number | null;
  readonly pin: string | null;
  /** In the words of the session file. */
  readonly detail: string;
  readonly hold: HoldReason | null;
}

export interface InterruptionLog {
  take(event: Numbered, pin: string | null): void;
  readonly interruptions: readonly Interruption[];
}

export const createInterruptionLog = (): InterruptionLog => {
  const interruptions: Interruption[] = [];
  let lastT = 0;
  const begin = (
    kind: InterruptionKind,
    from: number,
    pin: string | null,
    detail = '',
    hold: HoldReason | null = null,
  ): void => void interruptions.push({ kind, from, to: null, pin, detail, hold });
  const end = (t: number, kinds: readonly InterruptionKind[]): void => {
    interruptions.forEach((known, at) => {
      if (known.to === null && kinds.includes(known.kind)) interruptions[at] = { ...known, to: t };
    });
  };
  const takeLink = ({ change, detail, t }: EventOf<'link-changed'>, pin: string | null): void => {
    if (change === 'lost') begin('link-lost', t, pin, detail);
    else if (change === 'silent') begin('meter-silent', t, pin, detail);
    else if (change === 'failed') begin('link-failed', t, pin, detail);
    else if (change !== 'ended') end(t, ['link-lost', 'link-failed', 'meter-silent']);
  };
  return {
    interruptions,
    take(event, pin) {
      const { t } = event;
      switch (event.type) {
        case 'link-changed':
          takeLink(event, pin);
          break;
        case 'walk-held':
          begin('held', t, pin, event.detail, event.reason);
          break;
        case 'walk-freed':
          end(t, ['held']);
          break;
        case 'walk-paused':
          if (event.reason === 'asked') begin('paused', t, pin);
          break;
        case 'walk-continued':
          end(t, ['paused', 'meter-silent']);
          break;
        case 'file-changed':
          if (event.change === 'blocked') begin('file-blocked', t, pin, event.detail);
          else end(t, ['file-blocked']);
          break;
        case 'session-resumed':
          end(t, ['link-lost', 'link-failed', 'meter-silent', 'held', 'paused', 'file-blocked']);
          if (event.work === 'record') break;
          begin('left', lastT, pin);
          end(t, ['left']);
          break;
        default:
      }
      lastT = t;
    },
  };
};

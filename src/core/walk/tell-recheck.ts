// In a recheck: says at once when an untouched line reads otherwise than before, and at the end what all comes to.
import { comparePin, isAsBefore, judgeRecheck } from '../recheck/judge-recheck.js';
import type { Teller } from './teller.js';

/** To be called when a pin has been judged and nothing more is waited for there. */
export const tellControl = (teller: Teller, t: number, pin: string): void => {
  const { recheck } = teller.state;
  const compared = recheck === null ? null : comparePin(teller.state, recheck, pin);
  if (compared === null || !compared.because.includes('control')) return;
  if (compared.difference === 'unknown') return;
  const { line, score } = compared;
  const outcome = isAsBefore(compared) ? 'as-before' : 'moved';
  teller.tell({ type: 'control-compared', t, pin, line, outcome, score });
};

/** Once all is walked and pressed; `now` where the walk is left. */
export const tellRecheck = (teller: Teller, t: number, now: boolean): void => {
  const { recheck, recheckOutcome, stage, press, pressDue } = teller.state;
  if (recheck === null || recheckOutcome !== null) return;
  const isDone = stage === 'finished' && press === null && pressDue.length === 0;
  if (isDone || now) {
    teller.tell({ type: 'recheck-compared', t, ...judgeRecheck(teller.state, recheck) });
  }
};

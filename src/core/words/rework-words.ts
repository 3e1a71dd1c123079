// What is said of the work after the walk: rework under heat, the recheck, the tests and the closing of a job.
import type { EventOf } from '../events.js';
import type { Doubt } from '../recheck/closing.js';
import type { Difference, RecheckOutcome, RecheckReason } from '../recheck/recheck-events.js';
import type { ReworkRefusal } from '../rework/decide-rework.js';
import type { HeatCaution, JobOutcome, ReworkAction, ReworkTool } from '../rework/rework-events.js';
import type { Verdict } from '../verdict.js';

export interface ReworkWords {
  readonly action: Readonly<Record<ReworkAction, string>>;
  readonly tool: Readonly<Record<ReworkTool, string>>;
  readonly caution: Readonly<Record<HeatCaution, string>>;
  /** A name of a part or area; null where none was given. */
  place(name: string | null): string;
  seconds(seconds: number): string;
  setPoint(celsius: number): string;
  airflow(scale: number): string;
  readonly confirmed: string;
  heatStarted(place: string, setting: string): string;
  heatStopped(place: string, seconds: string, lost: boolean): string;
  limitMet(met: EventOf<'heat-limit-met'>, where: string): string;
  /** `setting` and `note` are empty where nothing is known. */
  logged(action: ReworkAction, place: string, setting: string, note: string): string;
  setPointOver(setPoint: string, allowed: string): string;
  readonly refused: Readonly<Record<ReworkRefusal, string>>;
  readonly noLimits: string;
  toWalk(pin: string, line: string, before: Verdict, because: readonly RecheckReason[]): string;
  controlMoved(pin: string, line: string): string;
  controlAsBefore(pin: string, line: string): string;
  readonly outcome: Readonly<Record<RecheckOutcome, string>>;
  compared(pin: string, line: string, before: Verdict, after: Verdict, is: Difference): string;
  powerChecked(event: EventOf<'power-checked'>): string;
  functionTested(event: EventOf<'function-tested'>): string;
  jobClosed(as: JobOutcome, reason: string): string;
  /** Why a recheck does not bear a repair out. */
  readonly doubt: Readonly<Record<Doubt, string>>;
  readonly firstPower: string;
  readonly screen: {
    readonly title: string;
    readonly confirm: string;
    /** Where not all cautions fit. */
    readonly taller: string;
    readonly place: string;
    readonly tool: string;
    readonly setPoint: string;
    readonly airflow: string;
    readonly action: string;
    readonly heatOn: string;
    readonly heatOff: string;
    run(seconds: string, allowed: string | null): string;
    total(where: string, seconds: string, allowed: string | null): string;
    readonly near: string;
    readonly passed: string;
    readonly done: string;
    readonly nothing: string;
    readonly typePlace: string;
    readonly typeSetPoint: string;
    readonly typeAirflow: string;
    readonly typeNote: string;
    readonly notNumber: string;
    readonly quitting: string;
    keys(heat: string, next: string, note: string, quit: string): readonly string[];
  };
  readonly lines: {
    readonly hint: string;
    unknown(text: string): string;
  };
}

export interface SpokenRework {
  heatOn(place: string): string;
  heatOff(seconds: string): string;
  readonly near: string;
  readonly passed: string;
  readonly logged: string;
  controlMoved(pin: string): string;
  readonly outcome: Readonly<Record<RecheckOutcome, string>>;
}

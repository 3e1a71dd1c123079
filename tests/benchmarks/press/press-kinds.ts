// The truths the press benchmark draws from, and what may be found on each.
import type { PressFinding } from '../../../src/core/press/decide-press.js';

export const pressKinds = [
  'loose',
  'sticky',
  'cracked',
  'bridged',
  'steady-open',
  'sound',
  'slipping',
] as const;
export type PressKind = (typeof pressKinds)[number];

/** The finding that is right; on a slipping probe anything that names no joint. */
export const rightFinding: Readonly<Record<PressKind, PressFinding | null>> = {
  loose: 'loose',
  sticky: 'loose',
  cracked: 'cracked',
  bridged: 'bridged',
  'steady-open': 'steady-open',
  sound: 'steady',
  slipping: null,
};

export const isFalseAlarm = (kind: PressKind, finding: PressFinding): boolean =>
  ['loose', 'cracked', 'bridged'].includes(finding) && finding !== rightFinding[kind];

// The pins of a session as CSV after RFC 4180: one record a pin in walking order, values in SI units, names in
// English whatever the report's language. Every record says which session it belongs to and whether it is simulated.
import { cleanText } from '../../core/clean-text.js';
import { type PinFacts, pinsOf } from '../../core/report/pin-facts.js';
import type { Report } from '../../core/report/report.js';
import { shortFingerprint } from '../../core/session-chain.js';
import { type CsvValue, csvRecord } from './csv-field.js';

const columns = [
  'connector',
  'pin',
  'line',
  'title',
  'kind',
  'group',
  'verdict',
  'confidence',
  'function',
  'unit',
  'value',
  'standard_uncertainty',
  'overload',
  'expected_low',
  'expected_nominal',
  'expected_high',
  'expected_overload',
  'touches',
  'settled_at_s',
  'session',
  'simulated',
  'after_verdict',
  'after_value',
  'after_standard_uncertainty',
  'after_overload',
  'difference',
  'difference_score',
  'redacted',
  'donor_verdict',
  'donor_value',
  'donor_standard_uncertainty',
  'donor_overload',
] as const;

type Row = Readonly<Record<(typeof columns)[number], CsvValue>>;

export const renderCsv = (report: Report): string => {
  const rows = pinsOf(report.account).map((pin) => rowOf(pin, report));
  return [
    csvRecord(columns),
    ...rows.map((row) => csvRecord(columns.map((column) => row[column]))),
  ].join('');
};

const rowOf = ({ planned, record, line, touches, donor }: PinFacts, report: Report): Row => {
  const { opened } = report.account;
  const { expected } = record;
  const bounds = expected === null || expected === 'overload' ? null : expected;
  const measure = opened.measure.function;
  const text = (of: string | undefined): string | null =>
    of === undefined ? null : cleanText(of, 200);
  return {
    connector: text(opened.profile.content.connector.id),
    pin: text(planned.pin),
    line: text(planned.line),
    title: text(line?.title),
    kind: planned.kind,
    group: text(planned.group),
    verdict: record.verdict,
    confidence: record.verdict === 'unread' ? null : record.confidence,
    function: measure,
    unit: measure === 'resistance' || measure === 'continuity' ? 'ohm' : 'V',
    value: record.value,
    standard_uncertainty: record.standardUncertainty,
    overload: record.overload,
    expected_low: bounds?.low ?? null,
    expected_nominal: bounds?.nominal ?? null,
    expected_high: bounds?.high ?? null,
    expected_overload: expected === 'overload',
    touches: touches.length,
    settled_at_s: touches.at(-1)?.t ?? null,
    session: shortFingerprint(report.source.fingerprint),
    simulated: report.account.simulated,
    ...afterOf(planned.pin, report),
    redacted: opened.redacted !== undefined,
    donor_verdict: donor?.verdict ?? null,
    donor_value: donor?.value ?? null,
    donor_standard_uncertainty: donor?.standardUncertainty ?? null,
    donor_overload: donor?.overload ?? null,
  };
};

/** The pin at the last recheck; empty where it was not walked again. */
const afterOf = (
  pin: string,
  { rechecks }: Report,
): Pick<
  Row,
  | 'after_verdict'
  | 'after_value'
  | 'after_standard_uncertainty'
  | 'after_overload'
  | 'difference'
  | 'difference_score'
> => {
  const again = rechecks.at(-1)?.compared?.pins.find((known) => known.pin === pin);
  return {
    after_verdict: again?.after.verdict ?? null,
    after_value: again?.after.value ?? null,
    after_standard_uncertainty: again?.after.standardUncertainty ?? null,
    after_overload: again === undefined ? null : (again.after.overload ?? false),
    difference: again?.difference ?? null,
    difference_score: again?.score ?? null,
  };
};

// The pages for a colleague, in order. A new kind of event gets one section here; a section that has
// nothing to say is left out.
import { siUnit } from '../../reading.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Section } from '../document.js';
import type { PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';
import { actsSection } from './acts.js';
import { connectorSection } from './connector.js';
import { donorSection } from './donor.js';
import { expectedSection } from './expected-values.js';
import { findingsSection } from './findings.js';
import { freePressSection } from './free-presses.js';
import { intakeSection } from './intake.js';
import { interruptionsSection } from './interruptions.js';
import { meterSection } from './meter.js';
import { pinTableSection } from './pin-table.js';
import { pressSection } from './press-tests.js';
import { probedPlacesSection } from './probed-places.js';
import { questionsSection } from './questions.js';
import { recheckSection } from './rechecks.js';
import { recordSection } from './record.js';
import { reworkSection } from './rework.js';
import { suspectsSection } from './suspects.js';
import { testsSection } from './tests-and-closing.js';

export const technicalPages = (
  report: Report,
  pins: readonly PinFacts[],
  language: TechnicalLanguage,
): readonly Section[] => {
  const unit = siUnit(report.account.opened.measure.function);
  const sections: readonly (Section | null)[] = [
    intakeSection(report, language),
    connectorSection(report, pins, language),
    findingsSection(report, pins, language, unit),
    donorSection(pins, language, unit),
    pressSection(report, language, unit),
    freePressSection(report, language, unit),
    suspectsSection(report, language),
    probedPlacesSection(report, language, unit),
    reworkSection(report, language),
    recheckSection(report, language, unit),
    testsSection(report, language),
    pinTableSection(pins, language, unit),
    questionsSection(report, language),
    actsSection(report, language),
    interruptionsSection(report, language),
    meterSection(report, language, unit),
    expectedSection(report, language),
    recordSection(report, language),
  ];
  return sections.filter((section) => section !== null);
};

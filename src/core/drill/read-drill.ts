// From the text of a drill file to the drill, or to every problem in it with its line.
import type { DefinitionKind } from '../definition/read-definition.js';
import { checkTexts } from '../profile/check-texts.js';
import { type Drill, drillFormat } from './drill-format.js';

export const drillKind: DefinitionKind<Drill> = {
  word: 'drill',
  format: drillFormat.shape.format.value,
  schema: drillFormat,
  check: (drill) => checkTexts(drill),
};

// Intake as a file, for shops whose counter writes it: the same fields as the options, photos and observations too.
import { z } from 'zod';
import type { DefinitionKind } from '../definition/read-definition.js';
import type { Problem } from '../problems.js';
import { checkTexts } from '../profile/check-texts.js';
import { answers, intakeFields } from './job-events.js';

const intakeFile = intakeFields.extend({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-intake/1'),
  /** Paths; a relative one begins at the folder of the intake file. */
  photos: z.array(z.string().min(1)).max(200).optional(),
  /** Answers by the profile's observations. */
  observed: z.record(z.string(), z.enum(answers)).optional(),
});
export type IntakeFile = z.infer<typeof intakeFile>;

export const intakeKind: DefinitionKind<IntakeFile> = {
  word: 'intake',
  format: intakeFile.shape.format.value,
  schema: intakeFile,
  check: (content): readonly Problem[] => checkTexts(content),
};

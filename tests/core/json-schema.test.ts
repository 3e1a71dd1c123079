// The JSON Schemas that editors use must be those of the formats the program reads.
import { describe, expect, it } from 'vitest';
import { jsonSchemaOf } from '../../src/core/json-schema.js';
import { readJsonFile } from '../support/driver-files.js';

describe('jsonSchemaOf', () => {
  it.each([
    ['driver', 'drivers/driver.schema.json'],
    ['profile', 'profiles/profile.schema.json'],
    ['drill', 'recordings/drills/drill.schema.json'],
  ] as const)(
    'should give the committed schema of a %s; if not, run npx tsx tests/tooling/write-schemas.ts',
    (kind, file) => {
      expect(readJsonFile(file)).toEqual(jsonSchemaOf(kind));
    },
  );

  it('should refuse unknown keys, as the program does, and explain the others', () => {
    expect(jsonSchemaOf('driver')).toMatchObject({
      additionalProperties: false,
      properties: { generic: { description: expect.stringContaining('typical') } },
    });
  });
});

// The formats of hand-written files as JSON Schema, for editors that check and complete while typing. Made of
// the same zod schemas that read the files; what those refuse beyond their shape, `check` says.
import { z } from 'zod';
import { configFormat, configKeys } from './config/config-format.js';
import { drillFormat } from './drill/drill-format.js';
import { driverFormat } from './meter/driver-format.js';
import { profileFormat } from './profile/profile-format.js';
import type { ConfigWords } from './words/config-words.js';

const formats = { driver: driverFormat, profile: profileFormat, drill: drillFormat } as const;
export type FormatKind = keyof typeof formats;

/** JSON Schema, draft 2020-12, of one format: the same object contents at every call. */
export const jsonSchemaOf = (kind: FormatKind): Readonly<Record<string, unknown>> =>
  z.toJSONSchema(formats[kind], { io: 'input' });

/** The same of the configuration, each key with what it means: editors show it while typing. */
export const configSchema = ({ keys }: ConfigWords): Readonly<Record<string, unknown>> => {
  const schema = z.toJSONSchema(configFormat, { io: 'input' });
  const described = configKeys.map((key) => {
    const { means, usual } = keys[key];
    return [key, { ...Object(schema.properties?.[key]), description: `${means} Usual: ${usual}.` }];
  });
  return { ...schema, properties: { ...schema.properties, ...Object.fromEntries(described) } };
};

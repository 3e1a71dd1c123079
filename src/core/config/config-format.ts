// A technician's settings, as the configuration file holds them. Every key may be left out; an option on the
// command line goes before the file. Strict: an unknown key is refused, so a typing slip never passes silently.
import { z } from 'zod';
import { cueModes } from '../cue-mode.js';
import type { DefinitionKind } from '../definition/read-definition.js';
import type { Problem } from '../problems.js';
import { type ReportLanguage, reportLanguageCodes } from '../words/report-languages.js';

const text = z.string().min(1).max(500);
const address = z.url({
  protocol: /^https?$/u,
  error: 'write an address such as https://shop.example/library/',
});

export const configFormat = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-config/1'),
  link: text.optional(),
  driver: text.optional(),
  profile: text.optional(),
  cues: z.enum(cueModes).optional(),
  reportLanguage: z.enum(reportLanguageCodes as [ReportLanguage, ...ReportLanguage[]]).optional(),
  technician: text.max(80).optional(),
  keysFile: text.optional(),
  padsFile: text.optional(),
  dataFolder: text.optional(),
  heatLimits: z
    .strictObject({
      /** Seconds under heat in one go, and all in all. */
      run: z.number().positive().max(3600).optional(),
      total: z.number().positive().max(3600).optional(),
      /** Of the tool, in degrees Celsius. */
      setPoint: z.number().positive().max(600).optional(),
    })
    .optional(),
  library: address.optional(),
  delivery: address.optional(),
  tokenFile: text.optional(),
});

type ConfigFile = z.infer<typeof configFormat>;
export type Config = Omit<ConfigFile, '$schema' | 'format'>;
export type ConfigKey = keyof Config;

export const configKeys = Object.keys(configFormat.shape).filter(
  (key) => key !== '$schema' && key !== 'format',
) as ConfigKey[];

/** These name a file or folder: a relative one lies beside the configuration file. */
export const pathKeys = ['keysFile', 'padsFile', 'dataFolder', 'tokenFile'] as const;

export const configKind: DefinitionKind<ConfigFile> = {
  word: 'configuration',
  format: configFormat.shape.format.value,
  schema: configFormat,
  check: (content) => (['library', 'delivery'] as const).flatMap((key) => secretIn(content, key)),
};

/** What stands in an address is shown and logged by every program on the way. */
const secretIn = (content: ConfigFile, key: 'library' | 'delivery'): Problem[] => {
  const { username, password } = new URL(content[key] ?? 'https://none.example/');
  if (username === '' && password === '') return [];
  const fix = 'take it out; a token goes into the file that tokenFile names';
  return [{ path: [key], what: 'the address holds a name or password', fix }];
};

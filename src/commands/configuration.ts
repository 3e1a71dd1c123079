// The configuration in force: read once, before any command acts.
import type { Config } from '../core/config/config-format.js';
import { readConfig } from '../store/config-file.js';
import { chooseDataFolder } from '../store/data-folder.js';

let inForce: Config = {};

export const configuration = (): Config => inForce;

/** Some of it, for options to go before; keys that are not set are left out. */
export const settings = <K extends keyof Config>(
  ...keys: readonly K[]
): { readonly [P in K]?: NonNullable<Config[P]> } =>
  Object.fromEntries(
    keys.flatMap((key) => (inForce[key] === undefined ? [] : [[key, inForce[key]]])),
  ) as { [P in K]?: NonNullable<Config[P]> };

/** @param file the one asked for, or undefined for the usual place. @throws FileError */
export const takeConfiguration = (file: string | undefined): void => {
  inForce = readConfig(file).config;
  chooseDataFolder(inForce.dataFolder);
};

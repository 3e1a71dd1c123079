// The configuration in force: read once, before any command acts.
import type { Config } from '../core/config/config-format.js';
import { readConfig } from '../store/config-file.js';
import { chooseDataFolder } from '../store/data-folder.js';

let inForce: Config = {};

export const configuration = (): Config => inForce;

/** @param file the one asked for, or undefined for the usual place. @throws FileError */
export const takeConfiguration = (file: string | undefined): void => {
  inForce = readConfig(file).config;
  chooseDataFolder(inForce.dataFolder);
};

// What is said of each setting, and of the settings as a whole.
import type { ConfigKey } from '../config/config-format.js';

export interface ConfigWords {
  /** `usual`: what holds where neither an option nor the file says otherwise. */
  readonly keys: Readonly<Record<ConfigKey, { readonly means: string; readonly usual: string }>>;
  read(path: string): string;
  notThere(path: string): string;
  written(path: string): string;
  readonly fromFile: string;
  readonly usual: string;
}

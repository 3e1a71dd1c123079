// Where a program keeps a person's data and settings, by the convention of each platform: the XDG Base Directory
// Specification on Linux and the like, Application Support on macOS, AppData on Windows.
import { homedir } from 'node:os';
import { posix, win32 } from 'node:path';

export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

export interface PlatformFolders {
  /** Sessions, and what was fetched from or waits for the shop. */
  readonly data: string;
  /** The configuration, and a person's own drivers and profiles. */
  readonly config: string;
}

const here = (): Surroundings => ({
  platform: process.platform,
  env: process.env,
  home: homedir(),
});

export const platformFolders = (
  { platform, env, home }: Surroundings = here(),
): PlatformFolders => {
  if (platform === 'darwin') {
    const support = posix.join(home, 'Library', 'Application Support', 'pinwalk');
    return { data: support, config: support };
  }
  if (platform === 'win32') {
    const { join } = win32;
    return {
      data: join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'pinwalk'),
      config: join(env.APPDATA || join(home, 'AppData', 'Roaming'), 'pinwalk'),
    };
  }
  const xdg = (given: string | undefined, ...usual: string[]): string =>
    // The specification: a path that is not absolute is to be ignored.
    posix.join(
      given !== undefined && posix.isAbsolute(given) ? given : posix.join(home, ...usual),
      'pinwalk',
    );
  return {
    data: xdg(env.XDG_DATA_HOME, '.local', 'share'),
    config: xdg(env.XDG_CONFIG_HOME, '.config'),
  };
};

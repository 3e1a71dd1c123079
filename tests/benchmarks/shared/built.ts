// A module as the program's build makes it: what runs the sources as they are makes them twice as slow.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Modules of `src`, by path; they share what they import. */
export const built = async (...paths: readonly string[]): Promise<readonly unknown[]> => {
  // Packages are found from there.
  const folder = mkdtempSync(join(root, 'node_modules', '.built-'));
  try {
    await build({
      entryPoints: paths.map((path) => join(root, 'src', path)),
      outbase: join(root, 'src'),
      outdir: folder,
      outExtension: { '.js': '.mjs' },
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      packages: 'external',
      logLevel: 'warning',
    });
    return await Promise.all(
      paths.map(
        (path) => import(pathToFileURL(join(folder, path.replace(/\.tsx?$/u, '.mjs'))).href),
      ),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
};

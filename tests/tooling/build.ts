// Makes the program from its sources: a few files, since opening hundreds of small ones, the packages' among them,
// is most of what a start takes. Only serialport stays outside, for its native part. `npm run build`.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'dist');

/** Packages that call `require` find it here. */
const requires =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

rmSync(out, { recursive: true, force: true });
const { metafile } = await build({
  absWorkingDir: root,
  entryPoints: ['src/main.ts'],
  outdir: out,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // Ink asks for its developer tools only when it is developed.
  external: ['serialport', 'react-devtools-core'],
  define: { 'process.env.NODE_ENV': '"production"' },
  banner: { js: requires },
  sourcemap: true,
  sourcesContent: false,
  metafile: true,
  logLevel: 'warning',
});

const packageOf = /^node_modules\/((?:@[^/]+\/)?[^/]+)/u;
const licence = /^(licen[cs]e|notice|copying)/iu;

/** The licence texts of every package that went in, as they ask for. */
const notices = (): string => {
  const inputs = Object.keys(metafile.inputs);
  const packages = new Set(inputs.flatMap((input) => packageOf.exec(input)?.[1] ?? []));
  return [...packages].sort().map(noticeOf).join('\n');
};

const noticeOf = (name: string): string => {
  const folder = join(root, 'node_modules', name);
  const stated: { version?: string; license?: string } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  );
  const texts = readdirSync(folder)
    .filter((file) => licence.test(file) && existsSync(join(folder, file)))
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  return `## ${name} ${stated.version} (${stated.license})\n\n${texts.join('\n\n')}\n`;
};

writeFileSync(join(out, 'LICENCES.md'), notices());

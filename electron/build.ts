import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { InlineConfig } from 'vite';

/** The app's folder: where package.json stands. */
const root = resolve(import.meta.dirname, '..');
// The bundler is loaded when there is something to build: most starts have nothing.
const common: InlineConfig = { root, configFile: false, logLevel: 'warn' };

/** The screens, for any host. */
export const buildScreens = async (): Promise<void> => {
  const [{ build }, { default: react }] = await Promise.all([import('vite'), import('@vitejs/plugin-react')]);
  await build({
    ...common,
    base: '/',
    plugins: [react()],
    build: { outDir: 'dist/renderer', emptyOutDir: true, target: 'chrome114', chunkSizeWarningLimit: 2000 },
  });
};

/**
 * The desktop shell: main, preload and solver, each one CommonJS file. The preload runs sandboxed and can load nothing;
 * only Electron itself, the database's native code and the integer solver's WebAssembly stay outside.
 */
export const buildShell = async (): Promise<void> => {
  const { build } = await import('vite');
  const entries = {
    main: 'electron/main.ts',
    preload: 'electron/preload.ts',
    solver: 'electron/solver/solver.ts',
  };
  for (const [name, entry] of Object.entries(entries))
    await build({
      ...common,
      ssr: { noExternal: true, external: ['electron', 'better-sqlite3', 'highs'] },
      build: {
        ssr: entry,
        outDir: 'dist/electron',
        emptyOutDir: false,
        target: 'node18',
        minify: false,
        rollupOptions: { output: { format: 'cjs', entryFileNames: `${name}.cjs`, codeSplitting: false } },
      },
    });
};

const SOURCES = ['core', 'demo-data', 'electron', 'renderer', 'index.html', 'package.json'];

/** True when the built file is missing or older than any source. */
export function isStale(built: string): boolean {
  const file = join(root, built);
  if (!existsSync(file)) return true;
  const builtAt = statSync(file).mtimeMs;
  return SOURCES.some((source) => newest(join(root, source)) > builtAt);
}

function newest(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), mtimeMs);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await buildScreens();
  await buildShell();
}

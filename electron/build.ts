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
    build: {
      ...{ outDir: 'dist/renderer', emptyOutDir: true, target: 'chrome114', chunkSizeWarningLimit: 2000 },
      // What a start needs is one file; left to itself the bundler makes forty, each with a request of its own.
      rolldownOptions: {
        output: { codeSplitting: { groups: [{ name: 'start', test: /renderer[\\/]main\.tsx$/ }] } },
      },
    },
  });
};

/**
 * The hosts: the desktop shell's main and preload, the host for a browser, and the solver of both, each one CommonJS file.
 * The preload runs sandboxed and can load nothing; only Electron itself, the database's native code and the integer
 * solver's WebAssembly stay outside. One file starts three times as fast as the several hundred it is made of.
 */
export const buildHosts = async (): Promise<void> => {
  const { build } = await import('vite');
  // The last one stands for all of them when it is asked whether they are stale.
  const entries = {
    main: 'electron/main.ts',
    preload: 'electron/preload.ts',
    browser: 'electron/browser-main.ts',
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

/** Which of both has to be built: it is missing, or older than any source. */
export function stale(): { readonly screens: boolean; readonly hosts: boolean } {
  const changedAt = Math.max(...SOURCES.map((source) => newest(join(root, source))));
  const isOld = (built: string): boolean => {
    const file = join(root, built);
    return !existsSync(file) || statSync(file).mtimeMs < changedAt;
  };
  return { screens: isOld('dist/renderer/index.html'), hosts: isOld('dist/electron/solver.cjs') };
}

function newest(path: string): number {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(join(path, name))),
    found.mtimeMs,
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await buildScreens();
  await buildHosts();
}

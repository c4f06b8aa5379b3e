import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

/** Lays a gzip and a brotli copy beside every text of the build, so that the server compresses nothing itself; once nobody writes into them any more. */
const compressedCopies = (): Plugin => ({
  name: 'compressed-copies',
  apply: 'build',
  enforce: 'post',
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      for (const file of Object.values(bundle)) {
        if (!/\.(?:js|css|html|svg|json)$/.test(file.fileName)) continue;
        const source = file.type === 'chunk' ? file.code : file.source;
        this.emitFile({
          type: 'asset',
          fileName: `${file.fileName}.gz`,
          source: gzipSync(source, { level: 9 }),
        });
        this.emitFile({ type: 'asset', fileName: `${file.fileName}.br`, source: brotliCompressSync(source) });
      }
    },
  },
});

/** Fetches the fonts beside the script instead of after it: texts that come first in another font wrap otherwise. */
const fontsAtOnce = (): Plugin => ({
  name: 'fonts-at-once',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (_html, { bundle }) =>
      Object.keys(bundle ?? {})
        .filter((name) => name.endsWith('.woff2'))
        .toSorted()
        .map((name) => ({
          tag: 'link',
          injectTo: 'head' as const,
          attrs: { rel: 'preload', as: 'font', type: 'font/woff2', href: `/${name}`, crossorigin: true },
        })),
  },
});

const fixedFiles = fileURLToPath(new URL('./ui/fixed', import.meta.url));
const SERVICE_WORKER = 'service-worker';

const sha256 = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Writes into the service worker which files it keeps: all of the build, each with its hash, and a version made of these. */
const offlineFiles = (): Plugin => ({
  name: 'offline-files',
  apply: 'build',
  enforce: 'post',
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      const worker = bundle[`${SERVICE_WORKER}.js`];
      if (worker?.type !== 'chunk') throw new Error('The build has no service worker.');
      if (worker.imports.length > 0 || worker.dynamicImports.length > 0)
        throw new Error(`The service worker shares files with the page: ${worker.imports.join(', ')}.`);
      const built = Object.values(bundle)
        .filter((file) => file !== worker && !/\.(?:gz|br|map)$/.test(file.fileName))
        .map((file) => [file.fileName, file.type === 'chunk' ? file.code : file.source] as const);
      const fixed = readdirSync(fixedFiles).map(
        (name) => [name, readFileSync(join(fixedFiles, name))] as const,
      );
      const files = [...built, ...fixed]
        .map(([name, bytes]) => ({ path: `/${name}`, sha256: sha256(bytes) }))
        .toSorted((a, b) => (a.path < b.path ? -1 : 1));
      const version = `ringwright-${sha256(JSON.stringify(files)).slice(0, 16)}`;
      worker.code = `const OFFLINE_FILES = ${JSON.stringify({ version, files })};\n${worker.code}`;
    },
  },
});

/** Refuses a build in which files of the page import each other: what is begun first would find the other empty, on some pages alone. */
const noRings = (): Plugin => ({
  name: 'no-rings',
  apply: 'build',
  generateBundle(_options, bundle) {
    const done = new Set<string>();
    const follow = (name: string, way: readonly string[]): void => {
      if (way.includes(name)) throw new Error(`Files import each other: ${[...way, name].join(' → ')}.`);
      const file = bundle[name];
      if (done.has(name) || file?.type !== 'chunk') return;
      for (const imported of file.imports) follow(imported, [...way, name]);
      done.add(name);
    };
    for (const name of Object.keys(bundle)) follow(name, []);
  },
});

/** What is asked of the builder: which modules import one at their beginning. */
interface Modules {
  readonly getModuleInfo: (id: string) => { readonly importers: readonly string[] } | null;
}

/** The pages, by the name of their file, that cannot begin without a module; none for what comes later, and for the worker's. */
function isNeededBy(id: string, modules: Modules): readonly string[] {
  const [seen, left] = [new Set([id]), [id]];
  for (let one = left.pop(); one !== undefined; one = left.pop())
    for (const importer of modules.getModuleInfo(one)?.importers ?? [])
      if (!seen.has(importer)) {
        seen.add(importer);
        left.push(importer);
      }
  return [...seen].flatMap((one) => /[\\/](\w+)\.html$/.exec(one)?.[1] ?? []);
}

export default defineConfig({
  root: fileURLToPath(new URL('./ui', import.meta.url)),
  // Files that go by one name in every build: what the browser knows the product by when it is on a home screen.
  publicDir: fixedFiles,
  // The list is made of files that are finished, and compressed as all others.
  plugins: [noRings(), offlineFiles(), compressedCopies(), fontsAtOnce()],
  // Of today's kind, so that what it shares with the page need not be wrapped.
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('./.built', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
    // Nothing inline: the content policy of the server allows scripts, styles and pictures from files only.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
    // That copies take time to compress is no news to whoever starts the product.
    rolldownOptions: {
      checks: { pluginTimings: false },
      input: {
        index: fileURLToPath(new URL('./ui/index.html', import.meta.url)),
        // What a customer sees through a link: nothing of the product is loaded with it.
        q: fileURLToPath(new URL('./ui/q.html', import.meta.url)),
        [SERVICE_WORKER]: fileURLToPath(new URL('./ui/offline/service-worker.ts', import.meta.url)),
      },
      // Browsers look for a newer service worker at the address of the one that they have.
      output: {
        entryFileNames: ({ name }) => (name === SERVICE_WORKER ? '[name].js' : 'assets/[name]-[hash].js'),
        // Else the names of all that share a file are its name.
        chunkFileNames: ({ name }) => `assets/${/^(?:first|shared)/.exec(name)?.[0] ?? '[name]'}-[hash].js`,
        codeSplitting: {
          groups: [
            // What a customer's page is made of comes before all else: that page fetches nothing besides.
            { name: (id, modules) => (isNeededBy(id, modules).includes('q') ? 'common' : null), priority: 3 },
            // What the first page cannot do without.
            {
              name: (id, modules) => (isNeededBy(id, modules).includes('index') ? 'first' : null),
              priority: 2,
            },
            // What several parts of the screen share is one file, the engine for the most part. More than one by who shares it can
            // import each other, and then what is begun first finds the other empty.
            {
              name: (id, modules) => (isNeededBy(id, modules).length === 0 ? 'shared' : null),
              minShareCount: 2,
            },
          ],
        },
      },
    },
    modulePreload: { polyfill: false },
  },
  server: {
    proxy: {
      '/api': { target: `http://127.0.0.1:${process.env.PORT ?? '4310'}`, changeOrigin: false },
    },
  },
});

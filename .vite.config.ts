import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

/** Lays a gzip and a brotli copy beside every text of the build, so that the server compresses nothing itself. */
const compressedCopies = (): Plugin => ({
  name: 'compressed-copies',
  apply: 'build',
  enforce: 'post',
  generateBundle(_options, bundle) {
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

export default defineConfig({
  root: fileURLToPath(new URL('./ui', import.meta.url)),
  plugins: [compressedCopies(), fontsAtOnce()],
  // Of today's kind, so that what it shares with the page need not be wrapped.
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('./.built', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
    // Nothing inline: the content policy of the server allows scripts, styles and pictures from files only.
    assetsInlineLimit: 0,
    // One file: every page of a job wants the engine, and pages change without loading anew.
    chunkSizeWarningLimit: 2000,
    // That copies take time to compress is no news to whoever starts the product.
    rolldownOptions: { checks: { pluginTimings: false } },
    modulePreload: { polyfill: false },
  },
  server: {
    proxy: {
      '/api': { target: `http://127.0.0.1:${process.env.PORT ?? '4310'}`, changeOrigin: false },
    },
  },
});

import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

const built = fileURLToPath(new URL('./.built', import.meta.url));

/** Lays a gzip and a brotli copy beside every text of the build, so that the server compresses nothing itself. */
const compressedCopies = (): Plugin => ({
  name: 'compressed-copies',
  apply: 'build',
  async closeBundle() {
    const files = await readdir(built, { recursive: true, withFileTypes: true });
    const texts = files.filter((file) => file.isFile() && /\.(?:js|css|html|svg|json)$/.test(file.name));
    await Promise.all(
      texts.map(async (file) => {
        const path = join(file.parentPath, file.name);
        const bytes = await readFile(path);
        await Promise.all([
          writeFile(`${path}.gz`, gzipSync(bytes, { level: 9 })),
          writeFile(`${path}.br`, brotliCompressSync(bytes)),
        ]);
      }),
    );
  },
});

export default defineConfig({
  root: fileURLToPath(new URL('./ui', import.meta.url)),
  plugins: [compressedCopies()],
  build: {
    outDir: built,
    emptyOutDir: true,
    target: 'es2022',
    // Nothing inline: the content policy of the server allows scripts, styles and pictures from files only.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: {
    proxy: {
      '/api': { target: `http://127.0.0.1:${process.env.PORT ?? '4310'}`, changeOrigin: false },
    },
  },
});

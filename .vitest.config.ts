import { defineConfig } from 'vitest/config';
import { closingLine } from './tests/closing-line.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/scratch-folder.ts', 'tests/journeys/build-screen.ts'],
    // On a busy machine what takes a second takes ten; a test that hangs is told in two minutes.
    testTimeout: 120_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 30_000 } },
    // Files wait for browsers, servers and disks most of the time: a core that only looks on would be idle.
    maxWorkers: '100%',
    // One after the other in the same process, modules loaded and compiled once: tests share no state but what they import,
    // and that keeps none. A fourth of the time.
    isolate: false,
    reporters: ['default', closingLine],
  },
});

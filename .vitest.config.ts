import { defineConfig } from 'vitest/config';
import { closingLine } from './tests/closing-line.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/journeys/build-screen.ts'],
    testTimeout: 30_000,
    hookTimeout: 120_000,
    // Files wait for browsers, servers and disks most of the time: a core that only looks on would be idle.
    maxWorkers: '100%',
    reporters: ['default', closingLine],
  },
});

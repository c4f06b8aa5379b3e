import type { Reporter, TestModule } from 'vitest/node';

/** Prints "N passed, N failed" alone on the last line, for machines that read it. */
export const closingLine: Reporter = {
  onTestRunEnd(modules: readonly TestModule[]) {
    let passed = 0;
    let failed = 0;
    let skipped = 0;
    for (const module of modules) {
      if (module.state() === 'failed' && module.children.size === 0) failed++;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
        else skipped++;
      }
    }
    process.stdout.write(
      `\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`,
    );
  },
};

import type { SerializedError } from 'vitest';
import type { Reporter, TestModule, TestRunEndReason } from 'vitest/node';

/** Prints one plain line at the very end: what passed, what failed, and what was skipped if anything was. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(
    modules: readonly TestModule[],
    errors: readonly SerializedError[],
    reason: TestRunEndReason,
  ): void {
    const count = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      const tests = [...module.children.allTests()];
      for (const test of tests) {
        const state = test.result().state;
        count[state === 'passed' || state === 'failed' ? state : 'skipped'] += 1;
      }
      // a file that does not load, or whose set-up fails, has no failed test of its own
      if (module.state() === 'failed' && !tests.some((test) => test.result().state === 'failed'))
        count.failed += 1;
    }
    count.failed += errors.length;
    if (reason === 'interrupted' && count.failed === 0) count.failed = 1;
    const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : '';
    // after the other reporters, which print as they are told
    process.on('exit', () =>
      process.stdout.write(`${count.passed} passed, ${count.failed} failed${skipped}\n`),
    );
  }
}

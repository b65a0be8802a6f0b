/** A mocha reporter for a worker: every failure in full, and the counts as the last line. */
export class counted {
  constructor(runner: Mocha.Runner) {
    const counts = { passed: 0, failed: 0, skipped: 0 };
    runner.on('pass', () => void counts.passed++);
    runner.on('pending', () => void counts.skipped++);
    runner.on('fail', (test, fault: Error) => {
      counts.failed++;
      console.log(`  FAILED ${test.fullTitle()}\n${fault.stack ?? fault.message}`);
    });
    runner.on('end', () => {
      const { passed, failed, skipped } = counts;
      console.log(`  a host without a machine behind it: ${passed} passed`);
      console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
    });
  }
}

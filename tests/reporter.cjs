/** A mocha reporter of few lines: one for each top suite, every failure in full, and the counts as the last line. */
const { Base } = require('mocha').reporters;

/** The outermost suite that has a name: the heading under which a test is counted. */
function heading(test) {
  let suite = test.parent;
  while (suite.parent && !suite.parent.root) suite = suite.parent;
  return suite.title;
}

class Brief {
  constructor(runner) {
    this.groups = new Map();
    this.failures = [];
    this.counts = { passed: 0, failed: 0, skipped: 0 };
    runner.on('pass', (test) => this.count(test, 'passed'));
    runner.on('pending', (test) => this.count(test, 'skipped'));
    runner.on('fail', (test, fault) => this.fail(test, fault));
    runner.on('suite end', (suite) => suite.parent?.root && this.close(suite.title));
    runner.on('end', () => this.finish());
  }

  count(test, result) {
    const name = heading(test);
    const group = this.groups.get(name) ?? { passed: 0, failed: 0, skipped: 0, ms: 0 };
    group[result] += 1;
    group.ms += test.duration ?? 0;
    this.counts[result] += 1;
    this.groups.set(name, group);
  }

  fail(test, fault) {
    this.count(test, 'failed');
    test.err ??= fault;
    this.failures.push(test);
    console.log(`    FAILED ${test.fullTitle()}`);
  }

  close(name) {
    const group = this.groups.get(name);
    if (!group) return;
    const parts = ['passed', 'failed', 'skipped'].filter((key) => group[key] > 0);
    console.log(`  ${name}: ${parts.map((key) => `${group[key]} ${key}`).join(', ')} (${group.ms} ms)`);
    this.groups.delete(name);
  }

  finish() {
    if (this.failures.length > 0) Base.list(this.failures);
    const { passed, failed, skipped } = this.counts;
    console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  }
}

module.exports = Brief;

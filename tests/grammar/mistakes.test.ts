/**
 * Mistakes that beginners make, each with the one problem that it earns, written under the line it concerns.
 * `UPDATE_GOLDEN=1` rewrites the file; read the difference aloud before it is kept.
 */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, SYNTAX_PROBLEMS, type SyntaxProblemCode } from '../../grammar';
import { annotated, withoutAnnotations } from '../support/annotations';
import { everyProblem, everyStatement, fixed, type PlacedProblem } from './support';

const FILE = join(process.cwd(), 'tests/grammar/mistakes.draft.txt');

interface Mistake {
  readonly title: string;
  readonly body: string;
}

function mistakes(): Mistake[] {
  const parts = readFileSync(FILE, 'utf8').split(/^--- (.*) ---\n/m);
  const found: Mistake[] = [];
  for (let i = 1; i < parts.length; i += 2) found.push({ title: parts[i]!, body: parts[i + 1]! });
  return found;
}

/** The source with its problems written under the lines. */
function told(text: string): string {
  const findings = everyProblem(parse(text)).map((problem) => ({
    code: problem.code,
    message: problem.message,
    severity: SYNTAX_PROBLEMS[problem.code as SyntaxProblemCode].severity,
    place: { uri: '', from: problem.from, to: problem.to },
    related: [],
    fixes: problem.problem.fixes.map(({ title }) => ({ title, edits: [] })),
  }));
  return annotated(text, findings as never, () => text);
}

function update(list: readonly Mistake[]): void {
  const sections = list.map(({ title, body }) => `--- ${title} ---\n${told(withoutAnnotations(body))}`);
  writeFileSync(FILE, sections.join(''));
}

const all = mistakes();
if (process.env.UPDATE_GOLDEN) update(all);

describe('mistakes of beginners', () => {
  for (const { title, body } of mistakes()) {
    it(title, () => {
      const text = withoutAnnotations(body);
      const problems = everyProblem(parse(text));
      assert.equal(told(text), body);
      assert.equal(problems.length, 1, 'one mistake, one problem');
      assert.ok(brokenBeside(text, problems[0]!) === 0, 'no good statement is lost');
    });
  }

  it('offers fixes that leave nothing to report', () => {
    const left = all.flatMap(({ title, body }) => {
      const text = withoutAnnotations(body);
      const [problem] = everyProblem(parse(text));
      if (!problem || problem.problem.fixes.length === 0) return [];
      return everyProblem(parse(fixed(text, problem))).map(({ code }) => `${title}: ${code}`);
    });
    assert.deepEqual(left, []);
  });

  it('shows every code of the grammar but the two that a page can’t hold', () => {
    const seen = new Set(
      all.flatMap(({ body }) => everyProblem(parse(withoutAnnotations(body))).map((one) => one.code)),
    );
    const missing = Object.keys(SYNTAX_PROBLEMS).filter((code) => !seen.has(code));
    assert.deepEqual(missing, ['too-deep', 'too-long']);
  });
});

/** Broken statements other than the one that the problem stands in. */
function brokenBeside(text: string, problem: PlacedProblem): number {
  const broken = everyStatement(parse(text)).filter(({ statement }) => statement.node.kind === 'broken');
  return broken.filter(
    ({ statement, from }) => problem.to < from || problem.from > from + statement.text.length,
  ).length;
}

/** One wrong word anywhere costs its own statement and hardly ever another. */
import assert from 'node:assert/strict';
import { edit, parse, tokensOf, type SourceFile, type TextToken } from '../../grammar';
import { random } from '../support/random';
import { everyStatement, samples } from './support';

/** A sample of them in every run; `EDITS=20000` runs as many as the bounds were measured with. */
const EDITS = Number(process.env.EDITS ?? 2500);
/** Statements lost beside the one that was hit, on average over all edits. */
const LOST = 0.06;
/** Share of edits that may lose more than one. */
const MANY = 0.02;

interface Subject {
  file: SourceFile;
  readonly text: string;
  readonly tokens: readonly TextToken[];
  readonly statements: readonly Listed[];
}

interface Mutation {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Deletes a token, puts another in its place or before it, or exchanges it with its neighbour. */
function mutation({ text, tokens }: Subject, below: (limit: number) => number): Mutation {
  const at = below(tokens.length);
  const token = tokens[at]!;
  const wordOf = ({ from, to }: TextToken) => text.slice(from, to);
  const other = wordOf(tokens[below(tokens.length)]!);
  const next = tokens[at + 1] ?? token;
  const exchanged = wordOf(next) + text.slice(token.to, next.from) + wordOf(token);
  const forms: Mutation[] = [
    { from: token.from, to: token.to, text: '' },
    { from: token.from, to: token.to, text: other },
    { from: token.from, to: token.from, text: `${other} ` },
    { from: token.from, to: next.to, text: next === token ? other : exchanged },
  ];
  return forms[below(forms.length)]!;
}

interface Listed {
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

/** The statements that can be read: by kind of block and words, braces apart. */
function listed(file: SourceFile): Listed[] {
  return everyStatement(file)
    .filter(({ statement }) => statement.node.kind !== 'broken')
    .map(({ statement, from }) => ({
      key: `${statement.inside} ${statement.text.replace(/\s*\{$/, '')}`,
      from,
      to: from + statement.text.length,
    }));
}

/** How many statements that were not hit are no longer there. The file is put back as it was. */
function lostBy(subject: Subject, change: Mutation): number {
  const { file } = edit(subject.file, change);
  const there = new Map<string, number>();
  for (const { key } of listed(file)) there.set(key, (there.get(key) ?? 0) + 1);
  let lost = 0;
  for (const { key, from, to } of subject.statements) {
    if (from <= change.to && to >= change.from) continue;
    const count = there.get(key) ?? 0;
    if (count === 0) lost++;
    else there.set(key, count - 1);
  }
  const back = {
    from: change.from,
    to: change.from + change.text.length,
    text: subject.text.slice(change.from, change.to),
  };
  subject.file = edit(file, back).file;
  return lost;
}

describe('one wrong word', () => {
  it('costs its own statement and hardly ever another', () => {
    const below = random(41);
    const subjects = samples().map(({ text }): Subject => {
      const file = parse(text);
      const tokens = tokensOf(text).filter(({ kind }) => kind !== 'comment');
      return { file, text, tokens, statements: listed(file) };
    });
    let lost = 0;
    let many = 0;
    for (let i = 0; i < EDITS; i++) {
      const subject = subjects[below(subjects.length)]!;
      const count = lostBy(subject, mutation(subject, below));
      lost += count;
      if (count > 1) many++;
    }
    assert.ok(lost / EDITS <= LOST, `${lost / EDITS} statements lost on average`);
    assert.ok(many / EDITS < MANY, `${(100 * many) / EDITS} % of the edits lose more than one`);
  }).timeout(300000);
});

/** Whole statements with places to fill in, as they may stand in a block: made from the forms that messages show. */
import { FORMS } from '../../grammar/forms';
import { inWords } from '../../grammar/say';
import { ruleOf, wordsOf, type BlockKind } from '../../grammar/words';

export interface WholeStatement {
  /** The word that it begins with; '' for an edge, which begins with its name. */
  readonly head: string;
  /** The form on one line: `seam NAME PIECE.EDGE = PIECE.EDGE`. */
  readonly form: string;
  /** What the statement is called, and one as it may stand in a pattern. */
  readonly what: string;
  readonly example: string;
  /** The form in the notation of editors: `${1:name}` is the first place to fill in, `$0` the last. */
  readonly snippet: string;
}

/** Read for their mistakes alone so far: nobody should be led to write one. */
const UNBUILT: ReadonlySet<string> = new Set(['trace', 'grade', 'fitting', 'cutDay', 'cloth', 'notion']);

/** The statements that may stand in a block, in the order of its words; a word with two forms has both. */
export function wholeStatements(kind: BlockKind): readonly WholeStatement[] {
  if (kind === 'outline') return formsOf('edge', '');
  return wordsOf(kind).heads.flatMap((head) => formsOf(ruleOf(kind, head)!, head));
}

function formsOf(rule: string, head: string): readonly WholeStatement[] {
  const known = UNBUILT.has(rule) ? undefined : FORMS[rule];
  if (known === undefined) return [];
  const { what, example } = known;
  return known.form
    .split(' or ')
    .map((form) => withHead(form, head))
    .filter((form) => form.startsWith(head === '' ? '' : `${head} `))
    .map((form) => ({ head, form, what: inWords(what), example, snippet: snippetOf(form) }));
}

/** A form that stands for several words (`WORD NAME = POINT`, `point NAME = …`) with the one that is meant. */
function withHead(form: string, head: string): string {
  const whole = form.replace(/^(?:WORD|point|lengthen)(?= )/, head);
  return LINES.has(head) ? whole.replace('= POINT', '= LINE') : whole;
}

/** Marks that lie along a line. */
const LINES: ReadonlySet<string> = new Set(['bone', 'tape', 'topstitch', 'crease']);

/** Words in capitals are the places to fill in, and a block stands open for its lines. */
function snippetOf(form: string): string {
  let place = 0;
  const line = form
    .replace(/[$}\\]/g, '\\$&')
    .replace(/\b[A-Z]+(?:-[A-Z]+)*\b|…/g, (word) => `\${${++place}:${word.toLowerCase()}}`);
  return line.endsWith('{') ? `${line}\n  $0\n}` : line;
}

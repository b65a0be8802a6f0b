/** The language as text: everything that the other rooms may use of it. */
export { parse, edit, type Change, type Edited } from './blocks';
export { format, formatEdits, sameMeaning, type TextEdit } from './format';
export { nextWords, type Next } from './next-words';
export { tokensOf, type TextToken, type TokenKind } from './text-tokens';
export { wordsOf, ruleOf, RESERVED, FUNCTIONS, GIVEN, UNITS, type BlockKind, type WordList } from './words';
export { FORMS, blockWords, type Form } from './forms';
export { SYNTAX_PROBLEMS, type Severity, type SyntaxCode, type SyntaxProblemCode } from './problems';
export * from './syntax';
export { usedPaths } from './used-paths';

/** What the parser's library found amiss, kept as data; `explain.ts` puts it in words. */
import type { IParserErrorMessageProvider, TokenType } from 'chevrotain';
import type { Token } from './tokens';

export interface Refusal {
  readonly expected: readonly TokenType[];
  readonly token: Token;
  readonly previous: Token | undefined;
}

/** Keeps what was expected as data instead of building the library's own sentences. */
export function provider(
  note: (refusal: Refusal, paths?: TokenType[][]) => void,
): IParserErrorMessageProvider {
  return {
    buildMismatchTokenMessage: ({ expected, actual, previous }) => {
      note({ expected: [expected], token: actual as Token, previous: previous as Token });
      return 'mismatch';
    },
    buildNotAllInputParsedMessage: ({ firstRedundant }) => {
      note({ expected: [], token: firstRedundant as Token, previous: undefined });
      return 'more';
    },
    buildNoViableAltMessage: ({ expectedPathsPerAlt, actual, previous }) => {
      const paths = expectedPathsPerAlt.flat();
      note(refusalOf(paths, actual as Token[], previous as Token), paths);
      return 'none';
    },
    buildEarlyExitMessage: ({ expectedIterationPaths, actual, previous }) => {
      note(refusalOf(expectedIterationPaths, actual as Token[], previous as Token));
      return 'early';
    },
  };
}

/** Of several ways on, the ones that agree longest with what stands there say what was expected. */
export function refusalOf(paths: TokenType[][], actual: Token[], previous: Token): Refusal {
  const first = actual[0]!;
  const deeper = paths.filter((path) => path.length > 1 && matches(first, path[0]!));
  if (deeper.length > 0 && actual.length > 1) {
    return { expected: unique(deeper.map((path) => path[1]!)), token: actual[1]!, previous: first };
  }
  return { expected: unique(paths.map((path) => path[0]!)), token: first, previous };
}

function unique<T>(list: T[]): T[] {
  return [...new Set(list)];
}

function matches(token: Token, type: TokenType): boolean {
  return token.tokenType === type || (token.tokenType.CATEGORIES ?? []).includes(type);
}

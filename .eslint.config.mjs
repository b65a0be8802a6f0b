/** The rules that the linter holds: strict TypeScript, no loose ends, and console output from the command line alone. */
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['node_modules/', 'dist/', 'out/', '.cache/', '.vscode-test/'] },
  ...tseslint.configs.recommended,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: ['error', 'always'],
      'no-console': 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      'no-control-regex': 'off',
      'no-constant-condition': ['error', { checkLoops: false }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['server/cli/**', '**/*.mjs', '**/*.cjs', 'tests/editor/**'],
    rules: { 'no-console': 'off', '@typescript-eslint/no-require-imports': 'off' },
  },
  {
    files: [
      'server/geometry/**',
      'server/drafting/**',
      'server/checks/**',
      'server/drawing/**',
      'server/features/**',
      'grammar/**',
    ],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'Results depend on their input alone.' },
        { object: 'Math', property: 'random', message: 'Results depend on their input alone.' },
      ],
    },
  },
);

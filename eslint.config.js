import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
// One way only: renderer → core ← electron (DEVELOPERS.md, "The arrows"). The rules below hold it.

const banned = (selector, message) => ({ selector, message });
const arrow = (group, message) => ({
  'no-restricted-imports': ['error', { patterns: [{ group, message }] }],
});

export default tseslint.config(
  { ignores: ['dist/**', 'test-results/**', 'playwright-report/**', 'migrations/**'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: false, skipComments: false }],
      'max-lines-per-function': ['error', { max: 60, skipComments: true, skipBlankLines: true, IIFEs: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      'no-empty': ['error', { allowEmptyCatch: false }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
    },
  },
  { files: ['tests/**'], rules: { 'max-lines-per-function': 'off' } },
  {
    files: ['core/**/*.ts'],
    rules: {
      ...arrow(
        [
          '**/electron/**',
          '**/renderer/**',
          '**/tests/**',
          '**/demo-data/**',
          'node:*',
          'electron',
          'react',
          'drizzle-orm',
          'better-sqlite3',
          'highs',
          'papaparse',
        ],
        'core is pure: it may import only core, date-fns, @date-fns/tz and zod. Pass the result in instead.',
      ),
      'no-restricted-syntax': [
        'error',
        banned(
          "CallExpression[callee.object.name='Date'][callee.property.name='now']",
          'core reads no clock: take `now` as an argument.',
        ),
        banned(
          "NewExpression[callee.name='Date'][arguments.length=0]",
          'core reads no clock: take `now` as an argument.',
        ),
        banned(
          "CallExpression[callee.object.name='Math'][callee.property.name='random']",
          'core draws no lots: take a seeded generator (core/schedule/search/rng.ts).',
        ),
      ],
    },
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: {
      ...reactHooks.configs.recommended.rules,
      ...arrow(
        [
          '**/electron/**',
          '**/tests/**',
          '**/demo-data/**',
          'node:*',
          'electron',
          'drizzle-orm',
          'better-sqlite3',
          'highs',
          'papaparse',
        ],
        'screens import core and renderer only; ask the host through renderer/queries/invoke.ts.',
      ),
    },
  },
  {
    files: ['electron/**/*.ts'],
    rules: arrow(
      ['**/renderer/**', '**/tests/**', 'react', 'react-dom'],
      'the host imports core and electron only; what a screen needs goes into core/contract.',
    ),
  },
);

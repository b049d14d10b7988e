import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import circles from './tests/lint/no-circle.js';
// One way only: renderer → core ← electron, and inside core from the contract down to units (DEVELOPERS.md, "The layers").

const banned = (selector, message) => ({ selector, message });
const arrow = (group, message) => ({
  'no-restricted-imports': ['error', { patterns: [{ group, message }] }],
});

/** The folders of core, the lowest first: each may import those before it. */
const layers = [
  'units',
  'time',
  'material',
  'part',
  'shop',
  'limits',
  'cutting',
  'estimate',
  'schedule',
  'planning',
  'learn',
  'edit',
  'import',
  'report',
  'contract',
];
/** What nothing in core may import, and what a folder there may not. */
const coreArrow = (folders, message) => ({
  'no-restricted-imports': [
    'error',
    {
      patterns: [
        {
          group: [
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
            'read-excel-file',
            'read-excel-file/*',
          ],
          message:
            'core is pure: it may import only core, date-fns, @date-fns/tz and zod. Pass the result in instead.',
        },
        ...(folders.length > 0 ? [{ group: folders.map((folder) => `../**/${folder}/**`), message }] : []),
      ],
    },
  ],
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
    files: ['**/*.{ts,tsx}'],
    plugins: { circles },
    rules: { 'circles/no-circle': 'error' },
  },
  ...layers.map((folder, level) => ({
    files: [`core/${folder}/**/*.ts`],
    rules: coreArrow(
      layers.slice(level + 1),
      `core/${folder} may import only what lies below it: ${layers.slice(0, level).join(', ')}. Put what both need there.`,
    ),
  })),
  {
    files: ['core/schedule/**/*.ts'],
    rules: coreArrow(
      layers.filter((folder) => !['units', 'schedule'].includes(folder)),
      'the scheduling engine knows machines, jobs and attributes, nothing of metal: translate in core/planning.',
    ),
  },
  {
    files: ['core/*.ts'],
    rules: coreArrow(layers, 'the files on top of core lie below every folder.'),
  },
  {
    files: ['core/**/*.ts'],
    rules: {
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

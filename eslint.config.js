import astro from 'eslint-plugin-astro';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** The clock, randomness and the process, which `shared/` takes as arguments so that a replay gives the same answer. */
const impureCalls = [
  {
    selector: "MemberExpression[object.name='Date'][property.name='now']",
    message: 'shared/ has no clock: take the instant as an argument.',
  },
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'shared/ has no clock: take the instant as an argument.',
  },
  {
    selector: "CallExpression[callee.name='Date']",
    message: 'shared/ has no clock: take the instant as an argument.',
  },
  {
    selector: "MemberExpression[object.name='Temporal'][property.name='Now']",
    message: 'shared/ has no clock: take the instant as an argument.',
  },
  {
    selector: "MemberExpression[object.name='performance']",
    message: 'shared/ has no clock: take the instant as an argument.',
  },
  {
    selector: "MemberExpression[object.name='Math'][property.name='random']",
    message: 'shared/ has no randomness: take the value as an argument.',
  },
  {
    selector: "MemberExpression[object.name='crypto'][property.name=/^(randomUUID|getRandomValues)$/]",
    message: 'shared/ has no randomness: take the value as an argument.',
  },
  {
    selector: "ImportDeclaration[source.value='uuid'] ImportSpecifier[imported.name=/^v[1-7]$/]",
    message: 'shared/ has no randomness: take the id as an argument.',
  },
];

/** Node runs these files with the types stripped: what cannot be erased cannot stay. */
const unerasable = [
  { selector: 'TSEnumDeclaration', message: 'Use a const array and its union: an enum cannot be erased.' },
  { selector: 'TSParameterProperty', message: 'Declare the field: a parameter property cannot be erased.' },
];

/** An instant without its zone reads differently on every machine; a test that skips itself asserts nothing. */
const everywhere = [
  ...unerasable,
  {
    selector: 'CallExpression[callee.property.name=/^toLocale(String|DateString|TimeString)$/]',
    message: "Use an Intl format with the utility's locale and time zone; the machine's are not the user's.",
  },
];

export default defineConfig(
  globalIgnores(['**/dist/', '**/cdk.out/', '.data/', 'out/', '**/.astro/', 'coverage/', '.cache/']),
  {
    name: 'house/typescript',
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: ['error', 'always'],
      'no-console': 'error',
      'no-restricted-syntax': ['error', ...everywhere],
      'no-template-curly-in-string': 'error',
      'prefer-const': 'error',
      'object-shorthand': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, allowDefaultCaseForExhaustiveSwitch: true },
      ],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      // Interfaces of stores are asynchronous whether or not a given store waits.
      '@typescript-eslint/require-await': 'off',
      // A store's `get<T>` names what the caller put there; the fold that wrote it is the check.
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
      // An area of the catalogue may be empty until its first word.
      '@typescript-eslint/no-generated-empty-object-type': 'off',
    },
  },
  {
    name: 'house/shared-is-pure',
    files: ['shared/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...everywhere, ...impureCalls],
      'no-restricted-globals': [
        'error',
        ...[
          'process',
          'Buffer',
          'setTimeout',
          'setInterval',
          'setImmediate',
          'fetch',
          'localStorage',
          'window',
          'document',
          'navigator',
          '__dirname',
          '__filename',
          'require',
        ].map((name) => ({
          name,
          message: 'shared/ runs anywhere and touches nothing: take what you need as an argument.',
        })),
      ],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            { regex: '^(node:|bun:)', message: 'shared/ has no node I/O.' },
            {
              regex: '^(fs|path|crypto|os|http|https|stream|util|child_process|worker_threads)$',
              message: 'shared/ has no node I/O.',
            },
            { regex: '^@aws-sdk/', message: 'shared/ does not know where its data are kept.' },
          ],
        },
      ],
    },
  },
  {
    name: 'house/commands-print',
    // People read these on a terminal; everything else logs through one place or not at all.
    files: ['infra/**/*.ts', 'functions/log/**/*.ts', 'tests/bench/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    name: 'house/tests',
    files: ['tests/**/*.ts'],
    rules: {
      // A wrong guess about a value fails the test, which is what a test is for.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-explicit-any': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unnecessary-condition': 'off',
      'no-restricted-syntax': [
        'error',
        ...everywhere,
        {
          selector: "MemberExpression[object.name=/^(describe|it|test)$/][property.name='only']",
          message: 'A test that runs alone hides the others.',
        },
      ],
    },
  },
  astro.configs['flat/recommended'],
  {
    name: 'house/astro',
    files: ['**/*.astro'],
    rules: {
      'astro/no-set-html-directive': 'error',
      'astro/no-unused-css-selector': 'off',
      'no-restricted-syntax': ['error', ...everywhere],
    },
  },
);

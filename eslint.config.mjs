import nextVitals from 'eslint-config-next/core-web-vitals';
import prettier from 'eslint-config-prettier';
import jsxA11y from 'eslint-plugin-jsx-a11y';
import tseslint from 'typescript-eslint';

const TYPED = ['**/*.ts', '**/*.tsx', '**/*.mts'];

/** Says who may import what. The direction is app -> lib/<area> -> lib/access, lib/records -> lib/db; all -> lib/rules. */
const zone = (files, patterns, ignores = []) => ({
  files,
  ignores,
  rules: { 'no-restricted-imports': ['error', { patterns }] },
});

const CLIENT = {
  regex: '(^@prisma/client|db/generated)',
  message: 'Only lib/db imports the database client; ask through lib/access.',
};
const LEAVES = 'lib/rules imports only itself, astronomy-engine and temporal-polyfill.';
const CORE = { regex: '^(?!\\.{1,2}/|astronomy-engine$|temporal-polyfill$)', message: LEAVES };
const APP = { regex: '(^@/app(/|$)|^(\\.\\./)+app(/|$))', message: 'lib never imports app.' };
const LINK = { regex: '^next/link$', message: 'Use app/_ui/link: nothing is fetched before it is pressed.' };
const DB = { regex: '(^@/lib/db(/|$)|lib/db(/|$))', message: 'app asks services, never the database.' };

export default tseslint.config(
  {
    ignores: [
      '.next/',
      '.data/',
      'lib/db/generated/',
      'test-results/',
      'playwright-report/',
      'next-env.d.ts',
    ],
  },
  ...nextVitals,
  ...tseslint.configs.strict.map((config) => ({ ...config, files: config.files ?? TYPED })),
  {
    files: TYPED,
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      // The few rules that need types and have saved writes before: a promise nobody waits for loses a write-up.
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/await-thenable': 'error',
      // A new kind of finding must break every switch over the old kinds.
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['**/*.tsx'],
    // The plugin itself is registered by Next's configuration; only its full list of rules is added.
    rules: jsxA11y.flatConfigs.recommended.rules,
  },
  {
    // No React here: a function may be called useOfFlight.
    files: ['lib/**', 'tests/**'],
    rules: { 'react-hooks/rules-of-hooks': 'off' },
  },
  {
    files: ['tests/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // The server tells what happens by lib/log.ts, which lets nobody's data through.
    files: ['lib/**', 'app/**', 'instrumentation.ts'],
    ignores: [
      'lib/operate/**',
      'lib/log/take-over-console.ts',
      // In the browser, to the person's own console.
      'app/error.tsx',
      'app/_ui/use-command.ts',
      'app/ramp/_phone/**',
      'app/ramp/out/**',
    ],
    rules: { 'no-console': 'error' },
  },
  // tests/rules/purity.test.ts resolves every import of the core; these catch the slip while typing.
  zone(['lib/rules/*.ts'], [CORE, { regex: '^\\.\\./', message: LEAVES }]),
  zone(['lib/rules/*/**'], [CORE, { regex: '^(\\.\\./){2}', message: LEAVES }]),
  zone(['lib/**'], [CLIENT, APP], ['lib/rules/**', 'lib/db/**']),
  zone(['lib/db/**'], [APP]),
  zone(['app/**'], [CLIENT, DB, LINK], ['app/_ui/link.tsx']),
  zone(['app/_ui/link.tsx'], [CLIENT, DB]),
  prettier,
);

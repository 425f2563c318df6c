// The linter's configuration. eslint.config.js at the root passes it on, because ESLint looks for it there.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'eslint/config';
import js from '@eslint/js';
import tseslint from 'typescript-eslint';
import { house } from './house-rules.mjs';

/** What the core must not touch: it has no clock, no chance, no world. */
const WORLD = [
  ...['process', 'Buffer', 'require', 'module', 'globalThis', 'window', 'self', 'document', 'navigator'],
  ...['fetch', 'XMLHttpRequest', 'WebSocket', 'Worker', 'localStorage', 'sessionStorage', 'crypto', 'performance'],
  ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'requestAnimationFrame', 'Date', 'Intl', 'eval'],
];

const CORE = ['packages/loomwright/src/**/*.ts'];
/** Whatever runs in a page as well: no console, no clock, no chance. */
const PURE = [...CORE, 'packages/worked/src/**/*.ts', 'packages/harness/src/**/*.ts'];
const TYPED = ['packages/*/src/**/*.ts', 'test/**/*.ts'];

const noDefault = { selector: 'ExportDefaultDeclaration', message: 'Give it a name: no default exports.' };
const coreSyntax = [
  noDefault,
  {
    selector: ":matches(ClassDeclaration, ClassExpression):not([superClass.name='Error'])",
    message: 'The core has functions and plain objects; only errors are classes.',
  },
  { selector: 'ImportExpression', message: 'The core loads nothing at run time.' },
  { selector: 'AwaitExpression', message: 'The core waits for nothing.' },
  {
    selector: ":matches(Program, ExportNamedDeclaration) > VariableDeclaration[kind!='const']",
    message: 'The core keeps no state.',
  },
];

const testSyntax = [
  {
    selector:
      'CallExpression > MemberExpression.callee[object.name=/^(?:it|test|describe)$/][property.name=/^(?:skip|only|todo|skipIf|runIf|fails)$/]',
    message: 'No skipped, exclusive or wished-for tests.',
  },
  {
    selector: 'MemberExpression[property.name=/^toMatch(?:Inline|File)?Snapshot$|^toThrowErrorMatching/]',
    message: 'A snapshot of our own output proves nothing.',
  },
];

/** The configuration, for a folder that holds `packages` and `test`. */
export function houseConfig(root) {
  return defineConfig(
    {
      ignores: [
        '**/node_modules/**',
        '**/dist/**',
        'test/gates/bad/**',
        'docs/api/**',
        'docs/.vitepress/cache/**',
        'docs/.vitepress/.temp/**',
        '**/*.timestamp-*.mjs',
        '**/*.d.ts',
      ],
    },
    { linterOptions: { reportUnusedDisableDirectives: 'error' } },
    js.configs.recommended,
    {
      files: ['**/*.{js,mjs}'],
      languageOptions: {
        globals: Object.fromEntries(
          [
            ...['process', 'console', 'URL', 'URLSearchParams', 'Buffer', 'performance', 'structuredClone', 'fetch'],
            ...['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'setImmediate', 'TextDecoder'],
            ...['TextEncoder', 'AbortController', 'AbortSignal', 'globalThis', 'WebAssembly', 'document', 'window'],
          ].map((name) => [name, 'readonly']),
        ),
      },
    },
    // Pages, benches and configuration: rules that need no types.
    { files: ['**/*.ts'], ignores: TYPED, extends: [tseslint.configs.strict] },
    {
      files: TYPED,
      extends: [tseslint.configs.strictTypeChecked],
      languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
      rules: {
        // Numbers belong in messages; what is neither text nor number does not.
        '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
        // Guards check what types promise: a caller from JavaScript has no types.
        '@typescript-eslint/no-unnecessary-condition': 'off',
        '@typescript-eslint/no-unnecessary-type-conversion': 'off',
        '@typescript-eslint/no-misused-spread': ['error', { allow: ['string'] }],
        '@typescript-eslint/no-unnecessary-type-parameters': 'off',
        '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
        // A literal type beside its literal says the same as `as const`, and emits better declarations.
        '@typescript-eslint/prefer-as-const': 'off',
        // Error messages show any value; templates are watched by the rule above.
        '@typescript-eslint/no-base-to-string': 'off',
        '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
        '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
        '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
        eqeqeq: 'error',
      },
    },
    {
      files: PURE,
      rules: {
        'no-console': 'error',
        'no-restricted-globals': ['error', ...WORLD.filter((name) => name !== 'Intl')],
        'no-restricted-properties': [
          'error',
          { object: 'Math', property: 'random', message: 'Take a seed from the caller.' },
        ],
        'no-restricted-syntax': ['error', noDefault],
      },
    },
    {
      files: CORE,
      plugins: { house },
      rules: {
        'no-restricted-globals': ['error', ...WORLD],
        'no-restricted-syntax': ['error', ...coreSyntax],
        '@typescript-eslint/explicit-module-boundary-types': 'error',
        'house/unit-suffix': 'error',
        'house/readonly-fields': 'error',
        'house/one-object': ['error', { except: ['tightestCheck'] }],
      },
    },
    // Plain mathematics has no units.
    { files: ['packages/loomwright/src/number/**/*.ts'], rules: { 'house/unit-suffix': 'off' } },
    {
      files: ['test/**/*.ts'],
      rules: {
        'no-restricted-syntax': ['error', ...testSyntax],
        // Tests hand over nonsense on purpose, and know what a lookup finds.
        '@typescript-eslint/no-non-null-assertion': 'off',
        '@typescript-eslint/no-dynamic-delete': 'off',
        '@typescript-eslint/no-misused-spread': 'off',
        '@typescript-eslint/no-unsafe-argument': 'off',
      },
    },
  );
}

export default houseConfig(fileURLToPath(new URL('../../', import.meta.url)));

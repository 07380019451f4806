import tseslint from 'typescript-eslint';
import hooks from 'eslint-plugin-react-hooks';

/** Rooms may import only what the house allows; tests/layers.test.ts holds the same rule without a linter. */
const forbid = (...patterns) => ({ 'no-restricted-imports': ['error', { patterns: patterns.map((group) => ({ group: [group] })) }] });

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'coverage/**', 'sample-signals/generated/**'] },
  ...tseslint.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx'],
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  { files: ['analysis/**/*.ts'], rules: forbid('**/main/**', '**/renderer/**', 'node:*', 'electron', 'react*', 'plotly*') },
  {
    files: ['renderer/**/*.ts', 'renderer/**/*.tsx'],
    plugins: { 'react-hooks': hooks },
    rules: { ...hooks.configs.recommended.rules, ...forbid('**/main/desktop/**', '**/main/loopback/**', '**/main/folder/**', '**/main/command/**', 'node:*', 'electron') },
  },
  { files: ['main/**/*.ts'], rules: { ...forbid('**/renderer/**'), 'no-console': 'off' } },
  { files: ['main/{loopback,folder,command}/**/*.ts', 'main/*.ts'], rules: forbid('**/renderer/**', 'electron') },
  { files: ['tests/**/*.ts', 'tests/**/*.tsx', 'sample-signals/**/*.ts'], rules: { 'max-lines-per-function': 'off', 'no-console': 'off' } },
);

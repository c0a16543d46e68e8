import tseslint from 'typescript-eslint';

/** The rules that a reader cannot see by eye: unused code, loose types, forgotten promises. */
export default tseslint.config(
  { ignores: ['node_modules', 'dist', '.lineament', '.astro', '**/*.astro', '**/*.mjs'] },
  ...tseslint.configs.recommended,
  {
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'no-console': 'off',
    },
  },
  // Tables and fixtures are as long as what they hold.
  { files: ['tests/**/fixtures/**/*.ts', 'tests/reference/**/*.ts'], rules: { 'max-lines': 'off' } },
  {
    files: ['analysis/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Date', 'process', 'document', 'window'],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'randomness is a parameter' },
      ],
    },
  },
);

import eslint from '@eslint/js';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/', 'out/', 'node_modules/'] },
  eslint.configs.recommended,
  ...tseslint.configs.strict,
  {
    rules: {
      // Flat arrays are indexed with computed, known-valid indices throughout the geometry.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      // What prettier does not break: comments. Sentences for people may be longer.
      'max-len': [
        'error',
        {
          code: 120,
          ignoreStrings: true,
          ignoreTemplateLiterals: true,
          ignoreRegExpLiterals: true,
          ignorePattern: 'eslint-',
        },
      ],
    },
  },
  {
    // What proves a plan shares no plane geometry with what made it.
    files: ['src/proof/**'],
    rules: { 'no-restricted-imports': ['error', { patterns: ['**/contour/*'] }] },
  },
  {
    // Plane geometry lies under everything.
    files: ['src/contour/**'],
    rules: { 'no-restricted-imports': ['error', { patterns: ['../*'] }] },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    languageOptions: {
      globals: { performance: 'readonly', process: 'readonly', console: 'readonly', URL: 'readonly' },
    },
  },
);

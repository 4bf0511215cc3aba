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
    },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    languageOptions: {
      globals: { performance: 'readonly', process: 'readonly', console: 'readonly', URL: 'readonly' },
    },
  },
);

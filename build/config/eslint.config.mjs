import svelte from 'eslint-plugin-svelte';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['**/node_modules/**', '**/dist/**'] },
  ...tseslint.configs.strict,
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
    rules: {
      // state is replaced whole here, never changed in place
      'svelte/prefer-svelte-reactivity': 'off',
      // the compiler warns of these itself, and the formatter needs some spaces spelled out
      'svelte/no-unused-svelte-ignore': 'off',
      'svelte/no-useless-mustaches': 'off',
    },
  },
  {
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-empty': ['error', { allowEmptyCatch: false }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  { files: ['core/cli.ts', 'core/cli/**', 'build/**', 'test/bench/**'], rules: { 'no-console': 'off' } },
);

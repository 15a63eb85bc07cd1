import tseslint from 'typescript-eslint';

// Biome does the rest; only the type checker can see a promise that nobody waits for.
export default tseslint.config({
  files: ['**/*.ts'],
  ignores: ['apps/web/**', 'test/architecture/fixtures/**'],
  languageOptions: { parser: tseslint.parser, parserOptions: { projectService: true } },
  plugins: { '@typescript-eslint': tseslint.plugin },
  rules: {
    '@typescript-eslint/no-floating-promises': 'error',
    '@typescript-eslint/no-misused-promises': 'error',
    'max-lines': ['error', { max: 300 }],
  },
});

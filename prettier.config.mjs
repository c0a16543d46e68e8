/** @type {import('prettier').Config} */
export default {
  singleQuote: true,
  printWidth: 110,
  plugins: ['prettier-plugin-astro'],
  overrides: [{ files: '*.astro', options: { parser: 'astro' } }],
};

import { unified } from '@astrojs/markdown-remark';
import mdx from '@astrojs/mdx';
import { defineConfig, fontProviders } from 'astro/config';
import remarkGfm from 'remark-gfm';
import { createHash } from 'node:crypto';
import { earlyTheme } from './components/layouts/early-theme.ts';
import { lineageIntegration } from './scripts/astro-adapter.ts';

/** `SITE` and `BASE_PATH` say where the pages will stand; `--content DIR` of the commands says whose lineages they show. */
export default defineConfig({
  srcDir: './components',
  outDir: './dist',
  site: process.env.SITE ?? 'https://lineament.example',
  base: process.env.BASE_PATH ?? '/',
  trailingSlash: 'ignore',
  prerenderConflictBehavior: 'error',
  session: false,
  devToolbar: { enabled: false },
  integrations: [mdx(), lineageIntegration()],
  markdown: { syntaxHighlight: false, processor: unified({ remarkPlugins: [remarkGfm] }) },
  security: { csp: { scriptDirective: { hashes: [hashOf(earlyTheme)] } } },
  fonts: [
    // A face that does not come within the first tenth of a second is kept for the next page, and one of its width and height
    // (styles/fonts/stand-ins.css) is read on this one: words that are being read never move.
    face('Newsreader', '--font-serif', 'newsreader.woff2', '400 600', 'normal', [
      'Reading stand-in',
      'serif',
    ]),
    face('Newsreader Italic', '--font-italic', 'newsreader-italic.woff2', '430', 'italic', [
      'Name stand-in',
      'serif',
    ]),
    face('Commissioner', '--font-sans', 'commissioner.woff2', '400 700', 'normal', [
      'Label stand-in',
      'system-ui',
    ]),
  ],
  vite: {
    build: {
      assetsInlineLimit: 0,
      rolldownOptions: { onLog: quietDirective },
    },
  },
});

/** Astro's own mark on MDX modules makes the bundler warn once a story; every other message passes. */
function quietDirective(level, log, pass) {
  if (log.code !== 'MODULE_LEVEL_DIRECTIVE' || !log.message.includes('astro:head-inject')) pass(level, log);
}

function face(name, cssVariable, file, weight, style, fallbacks) {
  return {
    provider: fontProviders.local(),
    name,
    cssVariable,
    fallbacks,
    optimizedFallbacks: false,
    display: 'optional',
    options: { variants: [{ weight, style, src: [`./components/styles/fonts/${file}`] }] },
  };
}

function hashOf(script) {
  return `sha256-${createHash('sha256').update(script).digest('base64')}`;
}

/** `npm start`: compiles the lineages, serves the pages with live reload, and prints the address. */
import { dev } from 'astro';
import { readCommandLine } from './options.ts';

const { contentDir, flags } = readCommandLine({
  port: { type: 'string' },
  host: { type: 'string' },
  preview: { type: 'boolean' },
});
process.env['LINEAMENT_CONTENT'] = contentDir;
if (flags['preview']) process.env['LINEAMENT_PREVIEW'] = 'yes';
const server = await dev({
  root: new URL('../', import.meta.url).pathname,
  logLevel: 'warn',
  server: {
    port: Number(flags['port'] ?? 4321),
    ...(typeof flags['host'] === 'string' && { host: flags['host'] }),
  },
});
console.log(`Lineament shows ${contentDir}`);
for (const url of [...server.resolvedUrls.local, ...server.resolvedUrls.network]) console.log(`  ${url}`);
console.log('Edit a record and the page follows. Stop with Ctrl+C.');
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    void server.stop().then(() => process.exit(0));
  });

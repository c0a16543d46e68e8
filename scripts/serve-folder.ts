import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

export interface FolderServer {
  url: string;
  close(): Promise<void>;
}

/** Serves a folder as any plain file server would: `index.html` for a folder, 404.html for what is not there. */
export async function serveFolder(folder: string, base = '/', port = 0): Promise<FolderServer> {
  const server = createServer((request, response) => {
    void answer(folder, base, request.url ?? '/').then(({ path, status }) => {
      if (!path) {
        response.writeHead(status).end();
        return;
      }
      response.writeHead(status, { 'content-type': types[extname(path)] ?? 'application/octet-stream' });
      createReadStream(path).pipe(response);
    });
  });
  await new Promise<void>((ready) => server.listen(port, '127.0.0.1', ready));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}${base}`,
    close: () => closed(server),
  };
}

async function answer(folder: string, base: string, url: string): Promise<{ path?: string; status: number }> {
  const pathname = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  if (!pathname.startsWith(base)) return { status: 404 };
  const wanted = normalize(join(folder, pathname.slice(base.length)));
  if (wanted !== normalize(folder) && !wanted.startsWith(normalize(folder + sep))) return { status: 403 };
  for (const path of [wanted, join(wanted, 'index.html')])
    if (await isFile(path)) return { path, status: 200 };
  const missing = join(folder, '404.html');
  return (await isFile(missing)) ? { path: missing, status: 404 } : { status: 404 };
}

async function isFile(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isFile(),
    () => false,
  );
}

function closed(server: Server): Promise<void> {
  return new Promise((done) => {
    server.closeAllConnections();
    server.close(() => done());
  });
}

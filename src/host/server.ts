import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';
import { CONTENT_SECURITY } from './headers.ts';

/**
 * Serves the built app to this machine alone. Files whose name holds a hash may be kept for ever;
 * all others are asked for anew, and what does not exist is 404, never the first page.
 * @param port 0 takes any free one
 */
export function serveApp(folder: string, port: number): Promise<{ server: Server; url: string }> {
  const files = sirv(folder, {
    // Looked up anew each time: the app may be built again while it is served.
    dev: true,
    etag: true,
    // Where they stand beside a file (vite.config.ts).
    brotli: true,
    gzip: true,
    setHeaders(response, path) {
      response.setHeader('Content-Security-Policy', CONTENT_SECURITY.join('; '));
      response.setHeader('X-Content-Type-Options', 'nosniff');
      response.setHeader('Referrer-Policy', 'no-referrer');
      response.setHeader(
        'Cache-Control',
        path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      );
    },
  });
  const server = createServer((request, response) =>
    files(request, response, () => {
      response.statusCode = 404;
      response.end('Not here.');
    }),
  );
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      resolve({ server, url: `http://localhost:${(server.address() as AddressInfo).port}/` });
    });
  });
}

import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

/** One file of the built screens as a host sends it. */
export interface Page {
  readonly status: 200 | 404;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.json': 'application/json',
  '.wasm': 'application/wasm',
};

/** Nothing may be loaded but our own files; one nonce a page lets the widgets add their style sheets. */
const policy = (nonce: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "connect-src 'self'",
    "font-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

const headersFor = (type: string, nonce: string): Record<string, string> => ({
  'Content-Type': type,
  'Content-Security-Policy': policy(nonce),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cache-Control': 'no-store',
});

/**
 * Read a file of the built screens. `/` is index.html, which gets the page's nonce in its <meta name="csp-nonce">.
 * @param folder dist/renderer; nothing outside it is ever read
 * @param pathname as in the address, percent-encoded
 */
export async function readPage(folder: string, pathname: string): Promise<Page> {
  const nonce = randomBytes(16).toString('base64');
  const file = fileOf(folder, pathname);
  const type = file && TYPES[extname(file)];
  const body = type ? await readFile(file).catch(absent) : null;
  if (!type || !body)
    return {
      status: 404,
      headers: headersFor('text/plain; charset=utf-8', nonce),
      body: Buffer.from('Not here.'),
    };
  if (extname(file) !== '.html') return { status: 200, headers: headersFor(type, nonce), body };
  const html = body.toString('utf8').replace(/(<meta name="csp-nonce" content=")"/, `$1${nonce}"`);
  return { status: 200, headers: headersFor(type, nonce), body: Buffer.from(html) };
}

/** A short text of our own, e.g. why an address is refused. */
export const textPage = (text: string): Omit<Page, 'status'> => ({
  headers: headersFor('text/plain; charset=utf-8', ''),
  body: Buffer.from(text),
});

/** Null when the path leads out of the folder or cannot be read as one. */
function fileOf(folder: string, pathname: string): string | null {
  const path = decoded(pathname);
  if (path === null || path.includes('\0')) return null;
  const root = normalize(folder);
  const file = join(root, path === '/' ? 'index.html' : path);
  return file.startsWith(root.endsWith(sep) ? root : root + sep) ? file : null;
}

function decoded(pathname: string): string | null {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return null;
  }
}

function absent(error: NodeJS.ErrnoException): null {
  if (['ENOENT', 'EISDIR', 'ENOTDIR', 'ENAMETOOLONG'].includes(error.code ?? '')) return null;
  throw error;
}

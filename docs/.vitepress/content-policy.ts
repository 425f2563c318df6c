import { createHash } from 'node:crypto';

/**
 * Puts a content policy at the head of a built page: everything from the site itself, no other host.
 * The one script that must run before anything is drawn (the choice of light or dark) stays inline and is named by its
 * hash; the rest that VitePress puts into the page is a file, or is left out because the theme has no use for it.
 */
export function withContentPolicy(html: string): string {
  const page = html
    .replace(/\s*<link rel="preload stylesheet" href="[^"]*vp-icons\.css"[^>]*>/, '')
    .replace(/\s*<script id="check-mac-os">[^<]*<\/script>/, '')
    // The reader of typed units is loaded when somebody types one, not with the page.
    .replace(/\s*<link rel="modulepreload" href="[^"]*\/reader\.[^"]*"[^>]*>/, '');
  const inline = [...page.matchAll(/<script(?![^>]*\bsrc=)[^>]*>([\s\S]*?)<\/script>/g)].map(
    ([, code = '']) => `'sha256-${createHash('sha256').update(code).digest('base64')}'`,
  );
  const policy = [
    "default-src 'self'",
    `script-src ${["'self'", ...inline].join(' ')}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data:",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
  ].join('; ');
  return page.replace(
    '<meta charset="utf-8">',
    `<meta charset="utf-8">\n    <meta http-equiv="Content-Security-Policy" content="${policy}">`,
  );
}

import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';

export type Load = { files: number; bytes: number };

/**
 * Counts what a page fetches from now on that is not an answer of the API, as
 * gzip makes it; fonts are compressed already. The answer is given once asked.
 */
export function countLoad(page: Page): () => Promise<Load> {
  const loaded: Promise<number>[] = [];
  page.on('response', (r) => {
    const url = new URL(r.url());
    if (r.status() !== 200 || url.pathname.startsWith('/api/')) return;
    loaded.push(r.body().then((b) => (url.pathname.endsWith('.woff2') ? b.length : gzipSync(b).length)));
  });
  return async () => {
    const sizes = await Promise.all(loaded);
    return { files: sizes.length, bytes: sizes.reduce((sum, n) => sum + n, 0) };
  };
}

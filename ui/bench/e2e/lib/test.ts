import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, test as base, expect, type Page } from '@playwright/test';
import { keepsDrafts, noBench, Server } from './server.ts';

const shots = join(import.meta.dirname, '..', 'out', 'shots');

type Fixtures = {
  /** A program of this test's own, on an empty workspace. */
  server: Server;
  /** What went wrong in any page of this test; the test fails if any did. */
  faults: string[];
  /** Faults that the test brings about on purpose. */
  expected: RegExp[];
};

export const test = base.extend<Fixtures>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names from the pattern
  server: async ({}, use) => {
    const server = await Server.start();
    await use(server);
    await server.stop();
  },
  expected: [[], { option: true }],
  faults: [
    async ({ context, server, expected }, use) => {
      const faults: string[] = [];
      watch(context, server.origin, faults);
      await use(faults);
      const surprises = faults.filter((f) => !expected.some((e) => e.test(f)));
      expect(surprises, 'errors in the page').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };

/** Keeps every error of a page, every refusal by its policy, and every request elsewhere. */
export function watch(context: BrowserContext, origin: string, faults: string[]): void {
  context.on('weberror', (e) => faults.push(`error: ${e.error().message}`));
  context.on('console', (m) => {
    if (m.type() === 'error') faults.push(`console: ${m.text()} (${m.location().url})`);
  });
  context.on('request', (r) => {
    const url = new URL(r.url());
    if (url.protocol.startsWith('http') && url.origin !== origin) faults.push(`request elsewhere: ${r.url()}`);
  });
}

/** Leaves out a test of the bench while the program has no API to run it on. */
export function needsBench(): void {
  test.skip(!keepsDrafts(), noBench);
}

/** A whole page as a picture, at a width and in a theme. */
export async function shoot(page: Page, name: string): Promise<void> {
  mkdirSync(shots, { recursive: true });
  for (const width of [390, 768, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.screenshot({
        path: join(shots, `${name}-${width}-${colorScheme}.png`),
        fullPage: true,
      });
    }
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: 'light' });
}

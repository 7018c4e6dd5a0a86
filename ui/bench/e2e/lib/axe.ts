import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type { AxeResults } from 'axe-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// A figure's button is named by its sentence, "Water activity 0.31, between 0.26
// and 0.36", which begins with its visible label; the rule wants every visible
// character of the values as well, in their order on the screen.
const off = { 'label-content-name-mismatch': { enabled: false } };

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds against WCAG 2.2 AA on the page as it stands, a line each. */
export async function violations(page: Page): Promise<string[]> {
  // Evaluated by the debugger, since the page's policy lets no script in.
  await page.evaluate(source);
  const found = await page.evaluate(
    ([tags, rules]) =>
      (window as unknown as { axe: { run(o: unknown): Promise<AxeResults> } }).axe.run({
        runOnly: { type: 'tag', values: tags },
        rules,
      }),
    [tags, off] as const,
  );
  return found.violations.flatMap((v) =>
    v.nodes.map((n) => `${v.id}: ${n.target.join(' ')}: ${n.failureSummary?.replace(/\s+/g, ' ')}`),
  );
}

/** The same in light and in dark, each named. */
export async function violationsInBoth(page: Page): Promise<string[]> {
  const all: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    all.push(...(await violations(page)).map((v) => `${colorScheme}: ${v}`));
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return all;
}

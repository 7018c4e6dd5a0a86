import { execFileSync } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { benchLine, percentile } from './lib/benchline.ts';
import { makeForty } from './lib/forty.ts';
import { stroke, watchStrokes } from './lib/keystrokes.ts';
import { countLoad } from './lib/load.ts';
import type { Server } from './lib/server.ts';
import { cell, figure } from './lib/sheet.ts';
import { expect, needsBench, test } from './lib/test.ts';

// How long she waits. Measured on whatever machine this is, and no test: nothing
// fails for being slow.

needsBench();

const counted = 100;
const warmUp = 8; // the first are slower, while the browser compiles

test('keystroke to figures', async ({ page, server }) => {
  const id = await makeForty(server);
  await page.goto(`${server.url}#/f/${id}`);
  const water = cell(page, 'percent', 1);
  await expect(water).toBeVisible();
  await expect(figure(page, 'Water activity')).toHaveAccessibleName(/0\.\d\d/);
  await water.click();
  await watchStrokes(figure(page, 'Water activity'));

  // The cell holds 1, 15, 1, 19, 1, …: a line fills up to 100, and water moves
  // the figures at every key.
  const keys = ['5', 'Backspace', '9', 'Backspace'];
  const texts = ['15', '1', '19', '1'];
  const said = new Map<string, string>();
  const figures: number[] = [];
  const painted: number[] = [];
  await stroke(page, '1', 0);
  for (let n = 0; n < warmUp + counted; n++) {
    await sleep(5 + Math.random() * 50); // not in step with the frames
    const s = await stroke(page, keys[n % 4] as string, n + 1);
    const text = texts[n % 4] as string;
    expect(said.get(text) ?? s.said, `the figures after ${text}`).toBe(s.said);
    said.set(text, s.said);
    if (n < warmUp) continue;
    figures.push(s.figures);
    painted.push(s.painted);
  }
  expect(new Set(said.values()).size, 'each number has figures of its own').toBe(3);
  // Of it, what passed between asking the program and its whole answer; the rest
  // is the page's own.
  const asked = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter((e) => e.name.includes('/api/assess'))
      .map((e) => e.duration),
  );
  expect(asked, 'one question for each key').toHaveLength(1 + warmUp + counted);
  for (const [name, times] of [
    ['KeystrokeAnswer/lines=40', asked.slice(-counted)],
    ['KeystrokeToFigures/lines=40', figures],
    ['KeystrokeToPaint/lines=40', painted],
  ] as const)
    print(name, times.length, { 'p50-ms': percentile(times, 0.5), 'p95-ms': percentile(times, 0.95) });
  await page.close();
  await idle(server, 'after-use');
});

test('first load', async ({ page, server }) => {
  await idle(server, 'started');
  const load = countLoad(page);
  await page.goto(server.url);
  await expect(page.getByRole('main')).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  print('FirstLoad', 1, { kB: (await load()).bytes / 1000 });
});

test('page ready', async ({ browser, server }) => {
  const id = await makeForty(server);
  const times: number[] = [];
  for (let n = 0; n < 9; n++) {
    const context = await browser.newContext(); // with nothing fetched before
    const page = await context.newPage();
    // From the start of the navigation, over the redirect that takes the token
    // away, until the last line and the figures stand there.
    await page.addInitScript((last) => {
      const look = (): void => {
        const line = [...document.querySelectorAll('[role="gridcell"]')].some((e) => e.ariaLabel?.includes(last));
        const figures = [...document.querySelectorAll('button')].some((b) =>
          b.ariaLabel?.startsWith('Water activity 0.'),
        );
        if (line && figures) (window as unknown as { ready: number }).ready = performance.now();
        else requestAnimationFrame(look);
      };
      look();
    }, 'Sodium benzoate, granules');
    await page.goto(`${server.url}#/f/${id}`);
    await page.waitForFunction(() => 'ready' in window);
    times.push(await page.evaluate(() => (window as unknown as { ready: number }).ready));
    await context.close();
  }
  print('PageReady/lines=40', times.length, { 'p50-ms': percentile(times, 0.5), 'max-ms': Math.max(...times) });
});

/** What the program holds in memory once it has had nothing to do for a while. */
async function idle(server: Server, when: string): Promise<void> {
  if (process.platform === 'win32') return; // there is no ps
  await sleep(3_000);
  const kB = Number(execFileSync('ps', ['-o', 'rss=', '-p', String(server.pid)], { encoding: 'utf8' }));
  expect(kB).toBeGreaterThan(0);
  print(`ServerIdle/${when}`, 1, { 'RSS-MB': (kB * 1024) / 1e6 });
}

function print(name: string, times: number, measured: Record<string, number>): void {
  console.log(benchLine(name, times, measured));
}

import { violations, violationsInBoth } from './lib/axe.ts';
import { countLoad } from './lib/load.ts';
import { keepsDrafts } from './lib/server.ts';
import { expect, shoot, test, watch } from './lib/test.ts';

const mostFirstLoad = 350_000;

test('the first page opens, loads little, and anyone can read it', async ({ page, server }) => {
  const load = countLoad(page);
  await page.goto(server.url);
  await expect(page.getByRole('main')).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  expect(page.url(), 'the token must leave the address').not.toContain('token=');

  const { files, bytes } = await load();
  console.log(`first load: ${files} files, ${(bytes / 1000).toFixed(1)} kB compressed`);
  expect(bytes).toBeLessThanOrEqual(mostFirstLoad);

  expect(await violationsInBoth(page)).toEqual([]);
  await shoot(page, 'first-page');
});

test('a formula opens, on a phone as on a desk', async ({ page, server }) => {
  await page.goto(server.url);
  await page
    .getByRole('link', { name: /Hand polish/i })
    .first()
    .click();
  await expect(page.getByText(/Water activity/i).first()).toBeVisible();
  for (const width of [390, 768, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(over, `the page is wider than ${width} px`).toBeLessThanOrEqual(0);
    expect(await violationsInBoth(page), `${width} px`).toEqual([]);
  }
  await shoot(page, 'formula');
});

test('without the token nothing is shown', async ({ browser, server }) => {
  test.skip(!keepsDrafts(), 'levigate serve prints no token yet');
  const stranger = await browser.newContext();
  const page = await stranger.newPage();
  for (const path of ['/', '/?token=wrong', '/api/drafts']) {
    const answer = await page.goto(server.at(path));
    expect(answer?.status(), path).toBe(401);
  }
  await page.goto(server.at('/'));
  await expect(page.getByText(/open the address that levigate printed/i)).toBeVisible();
  await stranger.close();
});

// The checks above must be able to fail.
test('axe and the watch catch a bad page', async ({ browser, server }) => {
  const context = await browser.newContext();
  const faults: string[] = [];
  watch(context, server.origin, faults);
  const page = await context.newPage();
  await page.setContent(
    '<title>t</title><main><button></button><p style="color:#aaa;background:#fff">faint</p></main>',
  );
  const found = (await violations(page)).join('\n');
  expect(found).toContain('button-name');
  expect(found).toContain('color-contrast');
  await page.goto(server.url);
  expect(faults).toEqual([]);
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.intruder = true';
    document.head.append(script);
    setTimeout(() => {
      throw new Error('thrown on purpose');
    });
  });
  await expect.poll(() => faults.join('\n')).toContain('Content Security Policy');
  await expect.poll(() => faults.join('\n')).toContain('thrown on purpose');
  await context.close();
});

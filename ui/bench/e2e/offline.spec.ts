import { cell, cellWith, expectKept, kept, openFormula, typeOver } from './lib/sheet.ts';
import { expect, needsBench, test } from './lib/test.ts';

needsBench();

test.use({ expected: [/ERR_INTERNET_DISCONNECTED|ERR_NETWORK_CHANGED|Failed to fetch/] });

test('offline, typing goes on; back, what was typed is sent once', async ({ context, page, server }) => {
  await openFormula(page, server, /walnut hand polish/i);
  const before = await kept(server, 'HP-01');

  await context.setOffline(true);
  await typeOver(page, cell(page, 'percent', 1), '22.00');
  await typeOver(page, cell(page, 'percent', 5), '7.50');
  await expect(page.getByText(/offline, 2 changes kept here/i)).toBeVisible();
  await expect(cellWith(page, 'percent', 1, '22.00')).toBeVisible();
  expect((await kept(server, 'HP-01')).revision).toBe(before.revision);

  await context.setOffline(false);
  await expect(page.getByText(/\boffline\b/i)).toBeHidden({ timeout: 20_000 });
  await expectKept(server, 'HP-01', 1, 'percent', '22.00');
  await expectKept(server, 'HP-01', 5, 'percent', '7.50');
  expect((await kept(server, 'HP-01')).revision).toBe(before.revision + 2);
});

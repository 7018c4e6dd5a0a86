import { cell, cellWith, expectKept, kept, openFormula } from './lib/sheet.ts';
import { expect, needsBench, test } from './lib/test.ts';

test.beforeEach(needsBench);

test('names typed one below the other each become a line', async ({ page, server }) => {
  await page.goto(server.url);
  await page.getByRole('button', { name: /empty sheet/i }).click();
  await page.getByRole('gridcell', { name: /raw material, open line/i }).click();
  await page.keyboard.type('Glycerin\nAqua\nKaolin\n');
  await page.keyboard.type('zzyzx'); // nothing is like it, so the arrow leaves the cell
  await page.keyboard.press('ArrowDown');
  await page.keyboard.type('Mica\n');
  for (const [i, name] of ['Glycerin', 'Aqua', 'Kaolin', 'zzyzx', 'Mica'].entries())
    await expect(cellWith(page, 'raw material', i + 1, name)).toBeVisible();
});

test('a click on the cell that Enter came to, and a number, replace what stands there', async ({ page, server }) => {
  await openFormula(page, server, /Hand polish/i);
  await cell(page, 'percent', 1).click();
  await page.keyboard.type('22\n');
  await cell(page, 'percent', 2).click();
  await page.keyboard.type('4\n');
  await expectKept(server, 'polish', 2, 'percent', '4');
});

test('an empty sheet is told nothing about', async ({ page, server }) => {
  await page.goto(server.url);
  await page.getByRole('button', { name: /empty sheet/i }).click();
  await expect(page.getByText('No water activity: no line has a percentage.')).toBeVisible();
  await expect(page.getByText(/below 0\.60/)).toHaveCount(0);
});

test('a temperature in another unit is the one the figures are for', async ({ page, server }) => {
  await openFormula(page, server, /Hand polish/i);
  const at = page.getByLabel('at', { exact: true });
  await at.fill('104 °F');
  await at.press('Enter');
  await expect(page.getByText(/at 40 °C, between/)).toBeVisible();
  // One that nothing can be checked for stays, with what to do about it.
  await at.fill('200');
  await at.press('Enter');
  await expect(page.getByText(/outside what can be checked/i)).toBeVisible();
  await expect(page.getByText(/at 25 °C, between/)).toBeVisible();
  await expect.poll(async () => (await kept(server, 'polish')).document.head.temperature).toBe('200');
});

test('a cell still being written is kept when the page is left', async ({ page, server }) => {
  await openFormula(page, server, /Hand polish/i);
  await cell(page, 'percent', 1).click();
  await page.keyboard.type('22');
  await page.goBack();
  await expectKept(server, 'polish', 1, 'percent', '22');
  await page.goForward();
  await cell(page, 'percent', 2).click();
  await page.keyboard.type('3');
  await page.reload();
  await expect(cellWith(page, 'percent', 2, '3.00')).toBeVisible();
  await expectKept(server, 'polish', 2, 'percent', '3');
});

import { violationsInBoth } from './lib/axe.ts';
import { arrowTo, cell, cellWith, figure, grid, kept, notesOf, paste, status, tabTo } from './lib/sheet.ts';
import { expect, needsBench, shoot, test } from './lib/test.ts';

needsBench();

// As a spreadsheet leaves it on the clipboard; one name is misspelt.
const block = [
  'Phase\tMaterial\t%',
  'A\tGlycerin, vegetable, 99.5 %\t21.00',
  'A\tPurified water\t2.00',
  'A\tSucrose laurate powder, high monoester\t3.00',
  'B\tSunflwoer oil, high-oleic, refined\tqs',
  'B\tKaolin, fine white\t8.00',
  'C\tWalnut shell powder, 150–400 µm\t7.00',
].join('\n');

test('a first sitting with nothing but the keyboard', async ({ page, server }) => {
  await page.goto(server.url);

  await test.step('a new sheet', async () => {
    const fresh = /^start an empty sheet/i;
    await tabTo(page, page.getByRole('button', { name: fresh }).or(page.getByRole('link', { name: fresh })));
    await page.keyboard.press('Enter');
    await expect(grid(page)).toBeVisible();
  });

  await test.step('paste a formula', async () => {
    await tabTo(page, grid(page).locator('[tabindex="0"]'));
    await paste(page, block);
    await expect(cellWith(page, 'percent', 1, '21')).toBeVisible();
    await expect(cell(page, 'raw material', 6)).toBeVisible();
  });

  await test.step('mend the name nobody knows', async () => {
    await expect.poll(() => notesOf(cell(page, 'raw material', 4))).not.toBe('');
    expect(await notesOf(cell(page, 'raw material', 4))).toMatch(/Sunflwoer/);
    await arrowTo(page, 'raw material', 4);
    await page.keyboard.type('Sunflower oil, high-oleic, refined');
    await page.keyboard.press('Enter');
    await expect(cellWith(page, 'raw material', 4, 'Sunflower oil')).toBeVisible();
    await expect.poll(() => notesOf(cell(page, 'raw material', 4))).not.toMatch(/Sunflwoer/);
    await expect(cellWith(page, 'percent', 4, '59')).toBeVisible();
  });

  await test.step('read a finding', async () => {
    await expect.poll(() => notesOf(cell(page, 'raw material', 6))).toMatch(/Walnut shell powder/);
  });

  const activity = figure(page, 'Water activity');
  let before: string | null = '';
  await test.step('open a working, and fold it', async () => {
    await expect(activity).toHaveAccessibleName(/0\.\d\d/);
    before = (await activity.getAttribute('aria-label')) ?? (await activity.textContent());
    await tabTo(page, activity);
    await page.keyboard.press('Enter');
    await expect(activity).toHaveAttribute('aria-expanded', 'true');
    await expect(page.getByRole('heading', { name: /what makes the band/i })).toBeVisible();
    expect(await violationsInBoth(page)).toEqual([]);
    await shoot(page, 'working');
    await page.keyboard.press('Escape');
    await expect(activity).toHaveAttribute('aria-expanded', 'false');
    await expect(activity).toBeFocused();
  });

  await test.step('change a line and hear what it did', async () => {
    await tabTo(page, grid(page).locator('[tabindex="0"]'));
    await arrowTo(page, 'percent', 2);
    await page.keyboard.type('9');
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => (await activity.getAttribute('aria-label')) ?? (await activity.textContent()))
      .not.toBe(before);
    await expect(status(page).filter({ hasText: /water activity 0\.\d\d/i })).toBeVisible();
  });

  await test.step('it is kept', async () => {
    await expect
      .poll(async () => (await kept(server, '')).document.lines.map((l) => l.cells.percent).join(' '))
      .toBe('21.00 9 3.00 qs 8.00 7.00');
  });

  expect(await violationsInBoth(page)).toEqual([]);
  await shoot(page, 'sheet');
});

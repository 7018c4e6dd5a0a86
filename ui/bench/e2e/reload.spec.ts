import { cell, cellWith, expectKept, kept, openFormula, typeOver } from './lib/sheet.ts';
import { expect, needsBench, test } from './lib/test.ts';

needsBench();

test('a reload in the middle of an edit loses nothing that was entered', async ({ page, server }) => {
  await openFormula(page, server, /walnut hand polish/i);
  const before = (await kept(server, 'HP-01')).document.lines[0]?.cells.percent ?? '';
  await typeOver(page, cell(page, 'percent', 1), '22.00');
  // Entered, sent or not: the page goes while the next cell is being typed.
  await cell(page, 'percent', 2).click();
  await page.keyboard.type('4');
  await page.reload();

  await expect(cellWith(page, 'percent', 1, '22.00')).toBeVisible();
  await expectKept(server, 'HP-01', 1, 'percent', '22.00');
  // What was being typed took the place of the old value, and is never something between.
  await expect(cell(page, 'percent', 2)).toHaveAccessibleName(/line 2, 4\.00$/);
  await expectKept(server, 'HP-01', 2, 'percent', '4');

  await test.step('undo and redo reach back over the reload', async () => {
    await cell(page, 'percent', 5).click();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+Z');
    await expect(cellWith(page, 'percent', 2, '2.00')).toBeVisible();
    await page.keyboard.press('Control+Z');
    await expect(cellWith(page, 'percent', 1, '21.00')).toBeVisible();
    await expectKept(server, 'HP-01', 1, 'percent', before);
    await page.keyboard.press('Control+Shift+Z');
    await expect(cellWith(page, 'percent', 1, '22.00')).toBeVisible();
    await expectKept(server, 'HP-01', 1, 'percent', '22.00');
  });
});

import { cell, cellWith, expectKept, notesOf, openFormula, typeOver } from './lib/sheet.ts';
import { expect, needsBench, test } from './lib/test.ts';

needsBench();

const polish = /walnut hand polish/i;

test('two windows on different cells: both edits stand in both', async ({ context, server }) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  await openFormula(one, server, polish);
  await openFormula(two, server, polish);
  await Promise.all([typeOver(one, cell(one, 'percent', 1), '22.00'), typeOver(two, cell(two, 'percent', 5), '7.50')]);
  for (const page of [one, two]) {
    await expect(cellWith(page, 'percent', 1, '22.00')).toBeVisible();
    await expect(cellWith(page, 'percent', 5, '7.50')).toBeVisible();
  }
  await expectKept(server, 'HP-01', 1, 'percent', '22.00');
  await expectKept(server, 'HP-01', 5, 'percent', '7.50');
});

test.describe('on the same cell', () => {
  // The refusal of the second edit is an answer of 409, which the browser logs.
  test.use({ expected: [/status of 409/] });

  test('the first edit stands, the second is asked', async ({ context, server }) => {
    const [one, two] = [await context.newPage(), await context.newPage()];
    await openFormula(one, server, polish);
    await openFormula(two, server, polish);

    // The second window is in the cell, with the old value seen, when the first writes.
    await cell(two, 'percent', 1).click();
    await two.keyboard.press('F2');
    await two.keyboard.press('Control+A');
    await two.keyboard.type('23.00');
    await typeOver(one, cell(one, 'percent', 1), '22.00');
    await expectKept(server, 'HP-01', 1, 'percent', '22.00');
    await two.keyboard.press('Enter');

    // Both values, side by side in the cell's note; nothing was overwritten.
    await expect.poll(() => notesOf(cell(two, 'percent', 1))).toMatch(/22\.00[\s\S]*23\.00|23\.00[\s\S]*22\.00/);
    await expectKept(server, 'HP-01', 1, 'percent', '22.00');
    await expect(cellWith(one, 'percent', 1, '22.00')).toBeVisible();
  });
});

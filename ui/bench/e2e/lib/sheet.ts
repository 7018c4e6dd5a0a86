import { expect, type Locator, type Page } from '@playwright/test';
import type { Server } from './server.ts';

// What the tests know of the sheet: the roles and names a screen reader is
// given. A cell is "percent, line 1, 21.00": column, line, value.

export type Column = 'phase' | 'raw material' | 'percent' | 'grams' | 'function';

export const grid = (page: Page): Locator => page.getByRole('grid');

export const cell = (page: Page, column: Column, line: number): Locator =>
  page.getByRole('gridcell', { name: new RegExp(`^${column}, line ${line}\\b`, 'i') });

/** The cell once it holds value, as typed or as computed. */
export const cellWith = (page: Page, column: Column, line: number, value: string): Locator =>
  page.getByRole('gridcell', {
    name: new RegExp(`^${column}, line ${line}, .*${literally(value)}`, 'i'),
  });

/** A figure of the strip: a button whose name is its sentence. */
export const figure = (page: Page, name: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^${literally(name)}\\b`, 'i') }).first();

/** The polite voice of the sheet. */
export const status = (page: Page): Locator => page.getByRole('status');

const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Opens a formula from the list that the first page is or leads to. */
export async function openFormula(page: Page, server: Server, name: RegExp): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('link', { name }).or(page.getByRole('button', { name })).first().click();
  await expect(cell(page, 'percent', 1)).toBeVisible();
}

/** Types over a cell, as in a spreadsheet: typing replaces, Enter keeps. */
export async function typeOver(page: Page, at: Locator, text: string): Promise<void> {
  await at.click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Goes with Tab to what is named, as someone without a mouse does. */
export async function tabTo(page: Page, to: Locator, most = 60): Promise<void> {
  await expect(to.first()).toBeVisible();
  for (let n = 0; n < most; n++) {
    if (await to.first().evaluate((el) => el === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`not reached with ${most} tabs: ${to}`);
}

/** Goes with the arrow keys to a cell of the grid that has the focus. */
export async function arrowTo(page: Page, column: Column, line: number): Promise<void> {
  const to = cell(page, column, line);
  const here = (): Promise<boolean> =>
    to.evaluate((el) => el === document.activeElement || el.getAttribute('aria-selected') === 'true');
  await page.keyboard.press('Control+Home');
  for (let n = 1; n < line; n++) await page.keyboard.press('ArrowDown');
  for (let n = 0; n < 8; n++) {
    if (await here()) return;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`the arrow keys do not reach ${column}, line ${line}`);
}

/** Pastes text as a spreadsheet leaves it on the clipboard. */
export async function paste(page: Page, text: string): Promise<void> {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate((t) => navigator.clipboard.writeText(t), text);
  await page.keyboard.press('Control+V');
}

/** What is said about a cell: the notes that it or its row is described by. */
export async function notesOf(at: Locator): Promise<string> {
  return at.evaluate((el) => {
    const row = el.closest('[role="row"]');
    const ids = [el, row].flatMap((e) => e?.getAttribute('aria-describedby')?.split(/\s+/) ?? []);
    return ids.map((id) => document.getElementById(id)?.textContent ?? '').join('\n');
  });
}

type Row = { id: string; cells: Record<string, string> };
type Kept = { revision: number; document: { head: Record<string, string>; lines: Row[] } };

/** The draft as the program keeps it, found by a text of its own. */
export async function kept(server: Server, text: string): Promise<Kept> {
  const list = await server.api(`/api/drafts?text=${encodeURIComponent(text)}&most=50`);
  expect(list.status).toBe(200);
  const { drafts } = (await list.json()) as { drafts: { id: string }[] };
  expect(drafts.length, `drafts that match ${text}`).toBeGreaterThan(0);
  const one = await server.api(`/api/drafts/${drafts[0]?.id}`);
  expect(one.status).toBe(200);
  return ((await one.json()) as { draft: Kept }).draft;
}

/** Waits until the program keeps value in a cell; what is on the screen may run ahead. */
export async function expectKept(
  server: Server,
  text: string,
  line: number,
  field: string,
  value: string,
): Promise<void> {
  await expect.poll(async () => (await kept(server, text)).document.lines[line - 1]?.cells[field]).toBe(value);
}

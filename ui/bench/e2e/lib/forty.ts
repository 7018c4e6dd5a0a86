import { expect } from '@playwright/test';
import type { Server } from './server.ts';

// Forty lines, half of them solutes: larger than anyone makes, and as slow as it
// gets. The benchmark of the check in internal/assess has the same.
const lines: readonly [string, string][] = [
  ['Aqua', '8'],
  ['Glycerin', '20'],
  ['Propanediol', '2'],
  ['Propylene Glycol', '2'],
  ['Butylene Glycol', '1'],
  ['Sorbitol', '2'],
  ['Xylitol', '1'],
  ['Mannitol', '0.2'],
  ['Erythritol', '0.5'],
  ['Sucrose', '1'],
  ['Glucose', '0.5'],
  ['Fructose', '0.5'],
  ['Maltose', '0.5'],
  ['Urea', '0.5'],
  ['Sodium Chloride', '0.2'],
  ['Glycine', '0.2'],
  ['Proline', '0.2'],
  ['Serine', '0.2'],
  ['Betaine', '0.5'],
  ['Lactic Acid', '0.2'],
  ['Sodium Lactate', '0.2'],
  ['Honey, runny', '1'],
  ['Glycerin, 86.5 %', '2'],
  ['Sucrose laurate powder, high monoester', '3'],
  ['Sunflower oil, high-oleic, refined', 'qs'],
  ['Caprylic/capric triglyceride, liquid', '8'],
  ['Mixed tocopherols 70 % in sunflower oil', '0.3'],
  ['Kaolin, fine white', '5'],
  ['Maize starch', '3'],
  ['Rice starch', '1'],
  ['Bentonite, sodium', '1'],
  ['Green clay (illite, holds iron)', '1'],
  ['Walnut shell powder, 150–400 µm', '5'],
  ['Sweet orange peel oil', '0.2'],
  ['Lavender oil', '0.1'],
  ['Shea butter, refined', '1'],
  ['Castor oil', '1'],
  ['Panthenol 75 %', '0.5'],
  ['Xanthan gum, 80 mesh', '0.1'],
  ['Sodium benzoate, granules', '0.3'],
];

/** Makes the draft of forty lines and gives its id. Its first line is the water. */
export async function makeForty(server: Server): Promise<string> {
  const id = 'forty-lines';
  const document = {
    head: { code: 'XL-40', name: 'Forty lines', product: 'hand-wash', batch: '500 g' },
    lines: lines.map(([material, percent], i) => ({ id: `line-${i + 1}`, cells: { phase: 'A', material, percent } })),
    making: [],
  };
  const made = await server.api('/api/drafts', { method: 'POST', body: JSON.stringify({ id, document }) });
  expect(made.status, await made.text()).toBe(201);
  const check = (await (await server.api(`/api/drafts/${id}/check`)).json()) as { rows: string[]; problems: unknown[] };
  expect(check.problems, 'a name nobody knows would make the check cheaper').toEqual([]);
  expect(check.rows).toHaveLength(lines.length);
  return id;
}

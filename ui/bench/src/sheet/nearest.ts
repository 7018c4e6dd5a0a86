// What the library holds that is near a name it does not hold.
import { api } from '../api/client.ts';
import type { Material } from '../api/types.ts';

// searches gives what to ask for, the most exact first.
export function searches(name: string): string[] {
  const plain = name
    .replace(/\(.*?\)/g, ' ')
    .replace(/[\d.,]+\s*(%|g|mg|mm|µm)/gi, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const words = plain
    .split(/[\s,;/]+/)
    .filter((w) => w.length >= 4)
    .sort((a, b) => b.length - a.length);
  const starts = words.filter((w) => w.length >= 6).map((w) => w.slice(0, Math.max(4, Math.ceil(w.length * 0.6))));
  return [...new Set([name.trim(), plain, ...words, ...starts])].filter((s) => s !== '');
}

// closeness counts pairs of letters two names share, so that the best of what
// was found comes first.
export function closeness(a: string, b: string): number {
  const pairs = (s: string) => {
    const t = s
      .toLowerCase()
      .normalize('NFD')
      .replace(/[^a-z0-9]/g, '');
    return new Set(Array.from({ length: Math.max(0, t.length - 1) }, (_, i) => t.slice(i, i + 2)));
  };
  const [x, y] = [pairs(a), pairs(b)];
  let shared = 0;
  for (const p of x) if (y.has(p)) shared++;
  return x.size + y.size === 0 ? 0 : (2 * shared) / (x.size + y.size);
}

export async function nearest(
  name: string,
  most: number,
  signal: AbortSignal,
  find = api.materials,
): Promise<Material[]> {
  const found = new Map<string, Material>();
  for (const text of searches(name)) {
    const { materials } = await find(text.slice(0, 200), 12, signal);
    for (const m of materials) found.set(m.code || m.name, m);
    if (found.size >= most) break;
  }
  const near = (m: Material) => Math.max(closeness(name, m.name), ...m.inci.map((i) => closeness(name, i)));
  return [...found.values()].sort((a, b) => near(b) - near(a)).slice(0, most);
}

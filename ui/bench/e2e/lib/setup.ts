import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { keepsDrafts, noBench } from './server.ts';

// Once before all tests: yesterday's pictures go, and what is left out is said.
export default function setup(): void {
  rmSync(join(import.meta.dirname, '..', 'out', 'shots'), { recursive: true, force: true });
  if (!keepsDrafts()) console.log(`The tests of the bench are left out: ${noBench}.`);
}

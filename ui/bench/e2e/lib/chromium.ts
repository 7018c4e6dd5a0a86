import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

// chromiumPath gives the browser that go run ./tools/dev test found, or the
// first on the path when the tests are run by hand.
export function chromiumPath(): string {
  const given = process.env.LEVIGATE_CHROMIUM;
  if (given) return given;
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of names) if (existsSync(join(folder, name))) return join(folder, name);
  }
  throw new Error('no Chromium on the path; install it, or name one in LEVIGATE_CHROMIUM');
}

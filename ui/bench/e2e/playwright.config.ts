import { defineConfig } from '@playwright/test';
import { chromiumPath } from './lib/chromium.ts';

// Everything the tests leave behind is under out, which git ignores.
export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  globalSetup: './lib/setup.ts',
  outputDir: 'out/results',
  fullyParallel: true,
  workers: 2,
  forbidOnly: !!process.env.CI,
  timeout: 90_000,
  expect: { timeout: 10_000 },
  reporter: [['list']],
  use: {
    viewport: { width: 1280, height: 900 },
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: chromiumPath(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});

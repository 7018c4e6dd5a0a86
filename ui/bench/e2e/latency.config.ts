import { defineConfig } from '@playwright/test';
import tests from './playwright.config.ts';

// Measures, one at a time, with nothing recorded that would take time of its own.
export default defineConfig({
  ...tests,
  testMatch: '*.bench.ts',
  globalSetup: [],
  workers: 1,
  fullyParallel: false,
  use: { ...tests.use, trace: 'off', screenshot: 'off' },
});

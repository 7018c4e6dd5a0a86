import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { licences } from './licences.ts';

// The bundle goes one folder deeper than what is embedded, so that emptying it
// never removes dist/.keep, without which the Go program would not build.
export default defineConfig({
  plugins: [react(), woff2Only(), licences()],
  publicDir: false,
  build: {
    outDir: 'dist/app',
    emptyOutDir: true,
    target: 'es2022',
    // The page's policy allows files of its own and nothing in the page itself.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { host: '127.0.0.1' },
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'e2e/lib/**/*.test.ts'],
    passWithNoTests: true,
  },
});

// The font packages offer every face twice. No browser that runs the bench
// takes the older kind, so it would only make the program larger.
function woff2Only(): Plugin {
  return {
    name: 'woff2-only',
    generateBundle(_, bundle) {
      for (const [name, file] of Object.entries(bundle)) {
        if (name.endsWith('.woff')) delete bundle[name];
        if (file.type === 'asset' && name.endsWith('.css')) {
          file.source = String(file.source).replace(/,\s*url\([^)]*\.woff\)\s*format\(["']?woff["']?\)/g, '');
        }
      }
    },
  };
}

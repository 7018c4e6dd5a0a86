import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

type Package = { name: string; version: string; dependencies?: Record<string, string> };

// licences puts beside the bundle the licence of everything that is in it: the
// packages named under dependencies, and those that they bring. A package
// without a licence file stops the build.
export function licences(): Plugin {
  return {
    name: 'licences',
    apply: 'build',
    generateBundle() {
      const own = read('package.json');
      const found = new Map<string, string>();
      const queue = Object.keys(own.dependencies ?? {});
      for (let name = queue.shift(); name; name = queue.shift()) {
        if (found.has(name)) continue;
        const folder = `node_modules/${name}`;
        const { version, dependencies } = read(`${folder}/package.json`);
        const file = readdirSync(folder).find((f) => /^licen[cs]e/i.test(f));
        if (!file) throw new Error(`${name} has no licence file, so it may not be bundled`);
        found.set(name, `${name} ${version}\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}`);
        queue.push(...Object.keys(dependencies ?? {}));
      }
      const source = `${[...found.keys()]
        .sort()
        .map((name) => found.get(name))
        .join('\n\n----\n\n')}\n`;
      this.emitFile({ type: 'asset', fileName: 'licences.txt', source });
    },
  };
}

const read = (path: string): Package => JSON.parse(readFileSync(path, 'utf8'));

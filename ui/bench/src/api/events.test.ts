import { expect, test } from 'vitest';
import { listen, type News, type Wires } from './events.ts';

// A browser with one server: locks queue up, channels reach the other pages.
function browser() {
  const sources: { tell: (type: string, data?: string) => void; closed: boolean }[] = [];
  const pages: ((e: { data: News }) => void)[] = [];
  let held: Promise<unknown> = Promise.resolve();
  const wires = (): Wires => ({
    source: () => {
      const on = new Map<string, (e: Event) => void>();
      const s = { tell: (type: string, data = '') => on.get(type)?.({ data } as unknown as Event), closed: false };
      sources.push(s);
      return {
        addEventListener: (type: string, f: unknown) => void on.set(type, f as (e: Event) => void),
        close: () => {
          s.closed = true;
        },
      };
    },
    locks: {
      request: ((_: string, __: unknown, f: () => Promise<unknown>) => {
        const mine = held.then(f);
        held = mine;
        return mine;
      }) as LockManager['request'],
    },
    channel: () => {
      let own: ((e: { data: News }) => void) | null = null;
      return {
        postMessage: (data: News) => {
          for (const p of pages) if (p !== own) p({ data });
        },
        addEventListener: (_: string, f: unknown) => {
          own = f as (e: { data: News }) => void;
          pages.push(own);
        },
        close: () => void pages.splice(pages.indexOf(own as never), 1),
      };
    },
  });
  return { sources, wires };
}

const rest = async () => {
  for (let i = 0; i < 10; i++) await Promise.resolve();
};

test('one page listens for all, and the next takes over', async () => {
  const { sources, wires } = browser();
  const heard: string[] = [];
  const on = (name: string) => (n: News) => heard.push(`${name} ${n.is === 'draft' ? n.event.revision : n.is}`);
  const stop = listen(wires(), on('one'));
  listen(wires(), on('two'));
  await rest();
  expect(sources).toHaveLength(1);
  sources[0]?.tell('draft', '{"id":"d","revision":4,"command":"c"}');
  sources[0]?.tell('draft', 'not json');
  sources[0]?.tell('draft', '{"id":"d"}');
  expect(heard).toEqual(['one 4', 'two 4']);
  stop();
  await rest();
  expect(sources.map((s) => s.closed)).toEqual([true, false]);
  sources[1]?.tell('open');
  expect(heard.slice(2)).toEqual(['two open']);
});

test('without locks each page listens for itself', () => {
  const { sources, wires } = browser();
  const { source } = wires();
  const stop = listen({ source }, () => {});
  listen({ source }, () => {});
  expect(sources).toHaveLength(2);
  stop();
  expect(sources.map((s) => s.closed)).toEqual([true, false]);
});

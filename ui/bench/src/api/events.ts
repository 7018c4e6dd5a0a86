// News of drafts. One page of a browser keeps the line to the server open and
// passes on what it hears: browsers allow few lines to one server. Whoever holds
// the lock is that page; when it goes the next one takes over. Without locks
// each page listens for itself.
import type { DraftEvent } from './types.ts';

export type News = { is: 'draft'; event: DraftEvent } | { is: 'open' } | { is: 'lost' };
type Listener = (news: News) => void;

export interface Wires {
  source: (url: string) => Pick<EventSource, 'addEventListener' | 'close'>;
  locks?: Pick<LockManager, 'request'> | undefined;
  channel?: (() => Pick<BroadcastChannel, 'postMessage' | 'addEventListener' | 'close'>) | undefined;
}

export function browserWires(): Wires {
  return {
    source: (url) => new EventSource(url),
    locks: typeof navigator !== 'undefined' && 'locks' in navigator ? navigator.locks : undefined,
    channel: typeof BroadcastChannel === 'function' ? () => new BroadcastChannel('levigate/events') : undefined,
  };
}

export function listen(wires: Wires, on: Listener): () => void {
  let closed = false;
  let close: () => void = () => {};
  const open = (tell: Listener): (() => void) => {
    const source = wires.source('/api/events');
    source.addEventListener('draft', (e) => {
      const event = read((e as MessageEvent<string>).data);
      if (event) tell({ is: 'draft', event });
    });
    source.addEventListener('open', () => tell({ is: 'open' }));
    source.addEventListener('error', () => tell({ is: 'lost' }));
    return () => source.close();
  };
  if (!wires.locks || !wires.channel) {
    const stop = open(on);
    return stop;
  }
  const channel = wires.channel();
  channel.addEventListener('message', (e) => !closed && on((e as MessageEvent<News>).data));
  const abort = new AbortController();
  wires.locks
    .request('levigate/events', { signal: abort.signal }, () => {
      if (closed) return Promise.resolve();
      const stop = open((news) => {
        if (closed) return;
        on(news);
        channel.postMessage(news);
      });
      return new Promise<void>((resolve) => {
        close = () => {
          stop();
          resolve();
        };
      });
    })
    .catch(() => {});
  return () => {
    closed = true;
    abort.abort();
    close();
    channel.close();
  };
}

function read(data: string): DraftEvent | null {
  try {
    const e = JSON.parse(data) as Partial<DraftEvent>;
    return typeof e.id === 'string' && typeof e.revision === 'number'
      ? { id: e.id, revision: e.revision, command: e.command ?? '' }
      : null;
  } catch {
    return null;
  }
}

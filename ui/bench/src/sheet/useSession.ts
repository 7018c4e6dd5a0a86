// Opens a draft, keeps it in step with the server, and gives what the page shows.
import { useEffect, useState, useSyncExternalStore } from 'react';
import { api, Failure, whyOf } from '../api/client.ts';
import { browserWires, listen } from '../api/events.ts';
import { newID } from '../grid/ids.ts';
import { Outbox } from '../grid/outbox.ts';
import { Session, type Snapshot } from '../grid/session.ts';

export type Opened =
  | { is: 'opening' }
  | { is: 'missing' }
  | { is: 'failed'; why: string }
  | { is: 'open'; session: Session };

const lockOf = (page: string): string => `levigate/page/${page}`;

// pageID is this page's own, also after a reload. A page that was duplicated
// finds the name taken and makes a new one.
let page: Promise<string> | null = null;
export function pageID(): Promise<string> {
  page ??= (async () => {
    const held = (id: string) =>
      new Promise<boolean>((resolve) => {
        if (!('locks' in navigator)) {
          resolve(true);
          return;
        }
        navigator.locks
          .request(lockOf(id), { ifAvailable: true }, (lock) => {
            resolve(lock !== null);
            return lock ? new Promise(() => {}) : undefined; // held as long as the page lives
          })
          .catch(() => resolve(true));
      });
    let id = '';
    try {
      id = sessionStorage.getItem('levigate/page') ?? '';
    } catch {
      // no storage: the page is new each time
    }
    if (id === '' || !(await held(id))) {
      id = newID();
      await held(id);
    }
    try {
      sessionStorage.setItem('levigate/page', id);
    } catch {
      // as above
    }
    return id;
  })();
  return page;
}

// adoptFrom takes over what pages that are gone have left unsent. A page that
// still lives holds its lock.
async function adoptFrom(outbox: Outbox, session: Session): Promise<void> {
  if (!('locks' in navigator)) return;
  for (const other of outbox.others()) {
    await navigator.locks.request(lockOf(other), { ifAvailable: true }, (lock) => {
      if (lock) session.adopt(outbox.take(other));
    });
  }
}

function storage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

export function useSession(id: string): Opened {
  const [opened, setOpened] = useState<Opened>({ is: 'opening' });
  useEffect(() => {
    let session: Session | null = null;
    let gone = false;
    setOpened({ is: 'opening' });
    const open = async () => {
      try {
        const [start, name] = await Promise.all([api.draft(id), pageID()]);
        if (gone) return;
        const outbox = new Outbox(storage(), id, name);
        session = new Session(id, start, api, outbox);
        setOpened({ is: 'open', session });
        await adoptFrom(outbox, session);
      } catch (e) {
        if (gone) return;
        if (e instanceof Failure && e.status === 404) setOpened({ is: 'missing' });
        else setOpened({ is: 'failed', why: whyOf(e) });
      }
    };
    void open();
    const stop = listen(browserWires(), (news) => {
      if (news.is === 'draft' && news.event.id === id) session?.heard(news.event.revision);
      if (news.is === 'open') {
        session?.again();
        session?.refresh();
      }
    });
    const online = () => session?.again();
    window.addEventListener('online', online);
    window.addEventListener('focus', online);
    return () => {
      gone = true;
      stop();
      session?.close();
      window.removeEventListener('online', online);
      window.removeEventListener('focus', online);
    };
  }, [id]);
  return opened;
}

export const useSnapshot = (s: Session): Snapshot => useSyncExternalStore(s.subscribe, s.snapshot);

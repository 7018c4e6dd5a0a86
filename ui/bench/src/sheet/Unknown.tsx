// Names the library does not hold, each with the nearest it does. What was
// typed stays until she takes one.
import { useEffect, useMemo, useState } from 'react';
import type { Check, Material } from '../api/types.ts';
import { Button } from '../design/parts.tsx';
import type { Document } from '../grid/document.ts';
import type { Session } from '../grid/session.ts';
import { say } from '../words.ts';
import { nearest } from './nearest.ts';

export interface UnknownName {
  id: string;
  n: number;
  name: string;
}

// useUnknown lists the lines whose name nothing was found for, but those she
// has chosen to keep.
export function useUnknown(
  doc: Document,
  check: Check | null,
): { rows: UnknownName[]; keep: (r: UnknownName) => void } {
  const [kept, setKept] = useState<ReadonlySet<string>>(new Set());
  const rows = useMemo(() => {
    const named = new Set(
      (check?.problems ?? []).filter((p) => p.field === 'material' && p.row).map((p) => p.row as string),
    );
    return doc.lines
      .map((l, i) => ({ id: l.id, n: i + 1, name: l.cells.material ?? '' }))
      .filter((l) => l.name !== '' && named.has(l.id) && !check?.lines?.[l.id]?.code && !kept.has(`${l.id}/${l.name}`));
  }, [check, doc, kept]);
  return { rows, keep: (r) => setKept(new Set([...kept, `${r.id}/${r.name}`])) };
}

export function Unknown({
  session,
  rows,
  keep,
}: {
  session: Session;
  rows: readonly UnknownName[];
  keep: (r: UnknownName) => void;
}) {
  if (rows.length === 0) return null;
  return (
    <section className="slip unknown" aria-labelledby="unknown-head">
      <h2 id="unknown-head">{say('unknown.title', { n: rows.length })}</h2>
      <p className="prose">{say('unknown.lead')}</p>
      <ul>
        {rows.map((r) => (
          <One
            key={`${r.id}/${r.name}`}
            n={r.n}
            name={r.name}
            use={(to) =>
              session.edit(say('edit.name'), [
                { do: 'set', list: 'lines', row: r.id, field: 'material', from: r.name, to },
              ])
            }
            keep={() => keep(r)}
          />
        ))}
      </ul>
    </section>
  );
}

function One({ n, name, use, keep }: { n: number; name: string; use: (name: string) => void; keep: () => void }) {
  const [near, setNear] = useState<Material[] | null>(null);
  useEffect(() => {
    const abort = new AbortController();
    nearest(name, 3, abort.signal).then(setNear, () => !abort.signal.aborted && setNear([]));
    return () => abort.abort();
  }, [name]);
  return (
    <li>
      <span className="typed">
        <b>{name}</b> <span className="cap">{say('unknown.line', { n })}</span>
      </span>
      <span className="choices">
        {near === null ? (
          <span className="cap">{say('unknown.asking')}</span>
        ) : near.length === 0 ? (
          <span className="cap">{say('unknown.none')}</span>
        ) : null}
        {near?.map((m) => (
          <Button key={m.code || m.name} onClick={() => use(m.name)}>
            {say('unknown.use', { name: m.name })}
          </Button>
        ))}
        <Button look="quiet" onClick={keep}>
          {say('unknown.keep')}
        </Button>
      </span>
    </li>
  );
}

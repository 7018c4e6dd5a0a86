// Names the library does not hold, each with the nearest it does. What was
// typed stays until she takes one.
import { useMemo, useState } from 'react';
import type { Check } from '../api/types.ts';
import { Button } from '../design/parts.tsx';
import type { Document } from '../grid/document.ts';
import type { Session } from '../grid/session.ts';
import { say } from '../words.ts';

export interface UnknownName {
  id: string;
  n: number;
  name: string;
  near: readonly string[];
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
      .map((l, i) => ({ id: l.id, n: i + 1, name: l.cells.material ?? '', near: check?.lines?.[l.id]?.nearest ?? [] }))
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
            near={r.near}
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

function One({
  n,
  name,
  near,
  use,
  keep,
}: {
  n: number;
  name: string;
  near: readonly string[];
  use: (name: string) => void;
  keep: () => void;
}) {
  return (
    <li>
      <span className="typed">
        <b>{name}</b> <span className="cap">{say('unknown.line', { n })}</span>
      </span>
      <span className="choices">
        {near.length === 0 && <span className="cap">{say('unknown.none')}</span>}
        {near.map((name) => (
          <Button key={name} onClick={() => use(name)}>
            {say('unknown.use', { name })}
          </Button>
        ))}
        <Button look="quiet" onClick={keep}>
          {say('unknown.keep')}
        </Button>
      </span>
    </li>
  );
}

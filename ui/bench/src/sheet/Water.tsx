// Where the water stands: the moisture curve and the rinse path, each with a
// sentence and a table that say the same.
import { useEffect, useState } from 'react';
import { api } from '../api/client.ts';
import type { Check, Curve } from '../api/types.ts';
import { Table } from '../design/parts.tsx';
import { say } from '../words.ts';
import { type Deal, dealOf } from './deal.ts';
import { DealtNote } from './Notes.tsx';

// useCurves asks for the drawn curves once typing rests; the old ones stay
// until then.
function useCurves(draft: string, revision: number): Curve[] | null {
  const [curves, setCurves] = useState<Curve[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new revision asks again
  useEffect(() => {
    const abort = new AbortController();
    const t = setTimeout(() => {
      api.check(draft, { curves: true }, abort.signal).then(
        (c) => setCurves(c.curves ?? []),
        () => {},
      );
    }, 150);
    return () => {
      clearTimeout(t);
      abort.abort();
    };
  }, [draft, revision]);
  return curves;
}

export function Water({
  draft,
  revision,
  check,
  onWhy,
}: {
  draft: string;
  revision: number;
  check: Check | null;
  onWhy: (rule: string) => void;
}) {
  const curves = useCurves(draft, revision);
  const deal: Deal = dealOf(check?.margin ?? [], check?.rows ?? []);
  return (
    <section className="part" aria-labelledby="water-head">
      <h2 id="water-head">{say('water.title')}</h2>
      {deal.water.length > 0 && (
        <div className="water-notes">
          {deal.water.map((d) => (
            <DealtNote key={d.note.rule + d.note.text} of={d} onWhy={onWhy} />
          ))}
        </div>
      )}
      {curves === null ? (
        <p className="prose">{say('water.wait')}</p>
      ) : curves.length === 0 ? (
        <p className="prose">{say('water.none')}</p>
      ) : (
        <div className="charts">
          {curves.map((c) => (
            <Chart key={c.id} of={c} />
          ))}
        </div>
      )}
    </section>
  );
}

export function Chart({ of }: { of: Curve }) {
  return (
    <figure aria-label={of.sentence}>
      <figcaption>
        <b>{of.title}</b>
      </figcaption>
      <Drawing svg={of.svg} className={of.narrow ? 'drawn wide' : 'drawn'} />
      {of.narrow && <Drawing svg={of.narrow} className="drawn narrow" />}
      <p className="cap said">{of.sentence}</p>
      <details>
        <summary>{say('water.table')}</summary>
        <Table of={of.table} caption={of.title} />
      </details>
    </figure>
  );
}

// The drawing is the server's own and every text in it has been escaped there.
function Drawing({ svg, className }: { svg: string; className: string }) {
  // biome-ignore lint/security/noDangerouslySetInnerHtml: from our own server, see above
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
  return <div className={className} tabIndex={0} dangerouslySetInnerHTML={{ __html: svg }} />;
}

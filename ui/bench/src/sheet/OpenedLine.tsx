// biome-ignore-all lint/a11y/useSemanticElements: a grid that is typed in is no <table>
// biome-ignore-all lint/a11y/useFocusableInteractive: one cell of a grid has the focus, the others do not
// A line unfolded: what it was found as, all it declares, and what can be done
// with it by touch.
import type { LineFound } from '../api/types.ts';
import { Button, Prose } from '../design/parts.tsx';
import type { Row } from '../grid/document.ts';
import type { Wording } from '../grid/edits.ts';
import type { Act } from '../grid/model.ts';
import type { Session } from '../grid/session.ts';
import { say } from '../words.ts';

export function OpenedLine({
  session,
  row,
  n,
  found,
  wording,
  fold,
  act,
}: {
  session: Session;
  row: Row;
  n: number;
  found: LineFound | undefined;
  wording: Wording;
  fold: () => void;
  act: (a: Act) => void;
}) {
  const note = row.cells.note ?? '';
  return (
    <div role="row" className="opened">
      <div role="gridcell" className="slip" onKeyDown={(e) => e.key === 'Escape' && fold()}>
        <h3 className="vh">{say('line.name', { n })}</h3>
        <div>
          <h4>{say('line.found')}</h4>
          <p>
            {found?.code ? (
              <>
                {found.name} <span className="cap">{found.code}</span>
              </>
            ) : (
              say('line.unfound')
            )}
          </p>
        </div>
        <div>
          <h4>{say('line.declares')}</h4>
          <p>{(found?.code && found.inci.join('; ')) || '–'}</p>
        </div>
        <div>
          <h4>{say('line.own-note')}</h4>
          <Prose
            label={say('line.own-note')}
            value={note}
            placeholder={say('line.no-note')}
            onDone={(to) =>
              session.edit(wording('write', 1), [
                { do: 'set', list: 'lines', row: row.id, field: 'note', from: note, to },
              ])
            }
          />
        </div>
        <p className="choices">
          <Button onClick={() => act({ do: 'shift', rows: [row.id], by: -1 })}>{say('line.up')}</Button>
          <Button onClick={() => act({ do: 'shift', rows: [row.id], by: 1 })}>{say('line.down')}</Button>
          <Button onClick={() => act({ do: 'insert', beside: row.id, above: false })}>{say('line.add')}</Button>
          <Button onClick={() => act({ do: 'remove', rows: [row.id] })}>{say('line.remove')}</Button>
          <Button look="quiet" onClick={fold}>
            {say('line.fold')}
          </Button>
        </p>
      </div>
    </div>
  );
}

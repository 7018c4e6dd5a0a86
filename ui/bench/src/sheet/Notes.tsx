// What stands in the margin of one line.
import { useState } from 'react';
import { Button, Note } from '../design/parts.tsx';
import type { Change, Clash } from '../grid/document.ts';
import type { Dispute, Session } from '../grid/session.ts';
import { say } from '../words.ts';
import { type Dealt, linesText } from './deal.ts';

export interface RowProblem {
  text: string;
  help: string;
}

// What must be answered always stands; of advice the first, the rest counted.
const standing = (dealt: readonly Dealt[]): number => Math.max(1, dealt.filter((d) => d.gravity !== 'advice').length);

export function DealtNote({ of, onWhy }: { of: Dealt; onWhy?: (rule: string) => void }) {
  const { note, gravity, also } = of;
  return (
    <Note gravity={gravity} text={note.text} help={note.help} needs={note.needs}>
      {also.length > 0 && (
        <span className="help">
          {' '}
          {say(also.length === 1 ? 'margin.line' : 'margin.lines', { lines: linesText(also) })}
        </span>
      )}
      {onWhy && note.rule && (
        <>
          {' '}
          <Button aria-label={say('margin.why', { rule: note.rule })} onClick={() => onWhy(note.rule)}>
            {say('margin.why-short')}
          </Button>
        </>
      )}
    </Note>
  );
}

export function ClashNote({ session, dispute, clash }: { session: Session; dispute: Dispute; clash: Clash }) {
  const show = (s: string) => (s === '' ? say('clash.nothing') : `“${s}”`);
  return (
    <Note
      gravity="clash"
      text={say(clash.gone ? 'clash.gone' : 'clash.said', { now: show(clash.now), mine: show(clash.mine) })}
    >
      <span className="choices">
        {clash.gone ? (
          <Button onClick={() => session.settle(dispute.id, 'theirs')}>{say('clash.put-away')}</Button>
        ) : (
          <>
            <Button onClick={() => session.settle(dispute.id, 'theirs')}>
              {say('clash.theirs', { now: show(clash.now) })}
            </Button>
            <Button onClick={() => session.settle(dispute.id, 'mine')}>
              {say('clash.mine', { mine: show(clash.mine) })}
            </Button>
          </>
        )}
      </span>
    </Note>
  );
}

export function LineNotes({
  id,
  dealt,
  problems,
  clashes,
  session,
  onWhy,
}: {
  id: string;
  dealt: readonly Dealt[];
  problems: readonly RowProblem[];
  clashes: readonly { dispute: Dispute; clash: Clash }[];
  session: Session;
  onWhy: (rule: string) => void;
}) {
  const [all, setAll] = useState(false);
  const first = standing(dealt);
  const more = dealt.length - first;
  return (
    <div className="notes" id={id}>
      {clashes.map(({ dispute, clash }) => (
        <ClashNote key={dispute.id + clash.field} session={session} dispute={dispute} clash={clash} />
      ))}
      {problems.map((p) => (
        <Note key={p.text} gravity="problem" text={p.text} help={p.help} />
      ))}
      {(all ? dealt : dealt.slice(0, first)).map((d) => (
        <DealtNote key={d.note.rule + d.note.text} of={d} onWhy={onWhy} />
      ))}
      {more > 0 && (
        <p className="note">
          <Button aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? say('margin.fewer') : say('margin.more', { n: more })}
          </Button>
        </p>
      )}
    </div>
  );
}

// setHead is the change of one field at the head of the sheet.
export const setHead = (from: string, field: string, to: string): Change => ({
  do: 'set',
  list: 'head',
  field,
  from,
  to,
});

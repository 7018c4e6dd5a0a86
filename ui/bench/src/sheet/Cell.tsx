// biome-ignore-all lint/a11y/useSemanticElements: a grid that is typed in is no <table>
// biome-ignore-all lint/a11y/useFocusableInteractive: one cell of a grid has the focus, the others do not
// One cell of the table: what it shows, and the box it is written in.
import { useLayoutEffect, useRef, useState } from 'react';
import type { Column, Edit } from '../grid/model.ts';
import { say } from '../words.ts';
import { useSuggestions } from './suggest.ts';

export interface EditorProps {
  edit: Edit;
  column: Column;
  label: string;
  onText: (text: string) => void;
  onKey: (e: React.KeyboardEvent, text: string) => boolean; // true: done with
  onPick: (name: string) => void;
  onLeave: () => void;
}

export function Editor({ edit, column, label, onText, onKey, onPick, onLeave }: EditorProps) {
  const box = useRef<HTMLInputElement>(null);
  const all = useRef(edit.all === true).current;
  useLayoutEffect(() => {
    const el = box.current;
    if (!el) return;
    el.focus({ preventScroll: true });
    el.setSelectionRange(all ? 0 : el.value.length, el.value.length);
  }, [all]);
  const naming = column === 'material';
  const list = useSuggestions(edit.text, naming);
  const [chosen, setChosen] = useState(-1);
  const [folded, setFolded] = useState(false);
  const open = naming && !folded && list.length > 0;
  const at = Math.min(chosen, list.length - 1);
  const option = (n: number) => `suggestion-${n}`;
  const keys = (e: React.KeyboardEvent<HTMLInputElement>) => {
    if (e.nativeEvent.isComposing) return;
    if (open) {
      if (e.key === 'ArrowDown' || e.key === 'ArrowUp') {
        e.preventDefault();
        const n = list.length + 1;
        setChosen(((at + 1 + (e.key === 'ArrowDown' ? 1 : n - 1)) % n) - 1);
        return;
      }
      if (e.key === 'Escape') {
        e.preventDefault();
        setFolded(true);
        return;
      }
      const pick = list[at];
      if (pick && (e.key === 'Enter' || e.key === 'Tab')) {
        if (onKey(e, pick.name)) e.preventDefault();
        return;
      }
    }
    if (onKey(e, e.currentTarget.value)) e.preventDefault();
  };
  return (
    <>
      <input
        ref={box}
        className="editor"
        value={edit.text}
        aria-label={label}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        inputMode={column === 'percent' || column === 'grams' ? 'decimal' : undefined}
        {...(naming
          ? {
              role: 'combobox',
              'aria-expanded': open,
              'aria-controls': 'suggestions',
              'aria-autocomplete': 'list' as const,
              'aria-activedescendant': open && at >= 0 ? option(at) : undefined,
            }
          : {})}
        onChange={(e) => {
          setChosen(-1);
          setFolded(false);
          onText(e.target.value);
        }}
        onKeyDown={keys}
        onBlur={onLeave}
      />
      {open && (
        <div className="suggestions" id="suggestions" role="listbox" aria-label={say('grid.suggestions')}>
          {list.map((m, n) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the box's
            <div
              key={m.code || m.name}
              id={option(n)}
              role="option"
              tabIndex={-1}
              aria-selected={n === at}
              className={n === at ? 'on' : undefined}
              onPointerDown={(e) => e.preventDefault()}
              onClick={() => onPick(m.name)}
              ref={n === at ? (el) => el?.scrollIntoView({ block: 'nearest' }) : undefined}
            >
              <Found name={m.name} typed={edit.text} />
              <span className="inci">{m.inci.join('; ')}</span>
            </div>
          ))}
        </div>
      )}
    </>
  );
}

// Found shows where in a name what was typed stands.
function Found({ name, typed }: { name: string; typed: string }) {
  const at = name.toLowerCase().indexOf(typed.trim().toLowerCase());
  if (at < 0 || typed.trim() === '') return <span>{name}</span>;
  const end = at + typed.trim().length;
  return (
    <span>
      {name.slice(0, at)}
      <b>{name.slice(at, end)}</b>
      {name.slice(end)}
    </span>
  );
}

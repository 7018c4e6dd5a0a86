// The line at the head of every page.
import { type ReactNode, useState } from 'react';
import { Button } from './design/parts.tsx';
import { say } from './words.ts';

type Theme = 'light' | 'dark';

const key = 'levigate/paper';

export function storedTheme(): Theme | null {
  try {
    const t = localStorage.getItem(key);
    return t === 'light' || t === 'dark' ? t : null;
  } catch {
    return null;
  }
}

export function wear(theme: Theme | null): void {
  if (theme) document.documentElement.dataset.theme = theme;
}

export function Top({ state, commands }: { state?: ReactNode; commands?: ReactNode }) {
  const [theme, setTheme] = useState<Theme>(
    () => storedTheme() ?? (window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'),
  );
  const other: Theme = theme === 'dark' ? 'light' : 'dark';
  return (
    <header className="top">
      <a href="#/" className="wordmark">
        {say('app.name')}
      </a>
      {state}
      <nav>
        <a href="#/">{say('app.formulas')}</a>
        {commands}
        <Button
          look="quiet"
          onClick={() => {
            wear(other);
            setTheme(other);
            try {
              localStorage.setItem(key, other);
            } catch {
              // it lasts as long as the page
            }
          }}
        >
          {say(other === 'dark' ? 'app.dark' : 'app.light')}
        </Button>
      </nav>
    </header>
  );
}

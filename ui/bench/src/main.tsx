import { createRoot } from 'react-dom/client';
import './design/index.css';
import './sheet/sheet.css';
import { App } from './App.tsx';
import { storedTheme, wear } from './Top.tsx';

const start = () => {
  wear(storedTheme());
  const root = document.getElementById('root');
  if (root) createRoot(root).render(<App />);
};

// vite --mode mock serves made-up answers; the bundle never holds them.
if (import.meta.env.MODE === 'mock')
  void import('./mock/server.ts').then((m) => {
    m.install();
    start();
  });
else start();

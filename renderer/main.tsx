import './no-eval.ts';
import { createRoot } from 'react-dom/client';
import type { Bridge } from '../main/contract.ts';
import { findHost } from './host/find-host.ts';
import { App } from './shell/app.tsx';
import { openEntry, refreshLists, troubleOf } from './state/open-rope.ts';
import { change } from './state/store.ts';
import './ui/tokens.css';
import './ui/window.css';
import './ui/strips.css';
import './ui/jobs.css';

const theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
change({ theme });
document.documentElement.dataset.theme = theme;
createRoot(document.getElementById('window')!).render(<App />);
findHost(window as unknown as { strandbook?: Bridge }).then(
  async ({ host, shell }) => {
    change({ host, shell });
    await refreshLists();
    if (shell.first !== null) await openEntry(shell.first);
  },
  (error: unknown) => change({ trouble: troubleOf(error, 'The program does not answer') }),
);

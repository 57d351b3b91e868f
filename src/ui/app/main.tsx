import './style.css';
import { render } from 'preact';
import { App } from './App.tsx';
import { watchForUpdates } from './app-update.ts';
import { importShared } from './share-target.ts';

render(<App />, document.getElementById('kingcup')!);
watchForUpdates();
// Without storage in the browser there is nothing to import.
importShared().catch(() => {});

import './style.css';
import { render } from 'preact';
import { App } from './App.tsx';
import { importShared } from './shared.ts';
import { watchForUpdates } from './update.ts';

render(<App />, document.getElementById('kingcup')!);
watchForUpdates();
// Without storage in the browser there is nothing to import.
importShared().catch(() => {});

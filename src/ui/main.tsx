import './style.css';
import { render } from 'preact';
import { App } from './App.tsx';
import { takeShared } from './shared.ts';
import { watchForUpdates } from './update.ts';

render(<App />, document.getElementById('kingcup')!);
watchForUpdates();
// A browser that keeps nothing has nothing to hand over.
takeShared().catch(() => {});

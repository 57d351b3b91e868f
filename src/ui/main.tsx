import './style.css';
import { render } from 'preact';
import { App } from './App.tsx';
import { watchForUpdates } from './update.ts';

render(<App />, document.getElementById('kingcup')!);
watchForUpdates();

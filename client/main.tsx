import { render } from 'preact';
import { App } from './app.tsx';
import { keepPageOnDevice } from './offline/register.ts';

render(<App />, document.getElementById('app') ?? document.body);
keepPageOnDevice();

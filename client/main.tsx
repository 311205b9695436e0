import { render } from 'preact';
import { App } from './app.tsx';
import { keepPageOnDevice } from './offline/register.ts';
import { watchForGesture } from './sound/gesture.ts';

watchForGesture();
render(<App />, document.getElementById('app') ?? document.body);
keepPageOnDevice();

// npm start: installs and builds what has changed, then serves in the foreground.
import console from 'node:console';
import process from 'node:process';
import { build, checkNode, installPackages, NeedsHelp, root } from './setup.mjs';

try {
  checkNode();
  installPackages();
  build();
} catch (error) {
  if (!(error instanceof NeedsHelp)) throw error;
  console.error(`\n${error.message}`);
  process.exit(1);
}

// In this very process: signals and kill -9 then hit the server itself, and no orphan keeps the port.
process.chdir(root);
await import('../build/server/main.js');

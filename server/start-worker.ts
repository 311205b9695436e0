import { Worker } from 'node:worker_threads';

/** Starts a worker of this folder as it was built; from the sources, in development and in tests, through tsx. */
export function startWorker(name: string): Worker {
  const here = import.meta.url;
  if (!here.endsWith('.ts')) return new Worker(new URL(`./${name}.js`, here));
  const source = new URL(`./${name}.ts`, here).href;
  const code = `import('tsx/esm/api').then(({ register }) => {
    register();
    return import(${JSON.stringify(source)});
  });`;
  return new Worker(code, { eval: true });
}

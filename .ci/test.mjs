// npm test: everything that must hold, step by step. `npm test -- src lint` runs only those steps.
import { spawnSync } from 'node:child_process';
import console from 'node:console';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { build, checkNode, findBrowser, installPackages, installPrograms, root } from './setup.mjs';

const tool = (script, ...args) => [path.join(root, 'node_modules', script), ...args];

const CHECKS = {
  types: tool('typescript/bin/tsc', '--build'),
  lint: tool(
    'eslint/bin/eslint.js',
    '--config',
    '.ci/eslint.config.js',
    '--max-warnings',
    '0',
    '.',
  ),
  layers: tool(
    'dependency-cruiser/bin/dependency-cruise.mjs',
    ...['--config', '.ci/layers.cjs', 'src', 'client', 'server', 'tests'],
  ),
  unused: tool('knip/bin/knip.js'),
  format: tool('prettier/bin/prettier.cjs', '--check', '.'),
};
const PROJECTS = ['src', 'server', 'browser'];
const STEPS = ['build', ...Object.keys(CHECKS), ...PROJECTS];

const wanted = process.argv.slice(2);
const unknown = wanted.filter((each) => !STEPS.includes(each));
if (unknown.length > 0) {
  console.error(`There is no step ${unknown.join(', ')}. The steps are: ${STEPS.join(', ')}.`);
  process.exit(2);
}

const total = { passed: 0, failed: 0 };

/** Runs a step, prints how it went and how long it took, and counts it. */
function step(name, work) {
  const startMs = performance.now();
  let outcome;
  try {
    outcome = work();
  } catch (error) {
    outcome = { passed: 0, failed: 1, output: `${error.message}\n` };
  }
  const { passed, failed, output = '' } = outcome;
  if (failed > 0) console.log(output);
  total.passed += passed;
  total.failed += failed;
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  const counts = passed + failed > 1 ? ` (${passed} passed, ${failed} failed)` : '';
  console.log(`${failed === 0 ? 'ok    ' : 'FAILED'} ${name.padEnd(8)} ${seconds} s${counts}`);
}

function runNode(args, environment = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
    env: { ...process.env, ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }), ...environment },
  });
  return { isFine: status === 0, output: `${stdout}${stderr}` };
}

function check(args) {
  const { isFine, output } = runNode(args);
  return { passed: isFine ? 1 : 0, failed: isFine ? 0 : 1, output };
}

/** A test that is skipped has not passed; a file that does not load hides its tests: both count as failed. */
function vitest(project, environment) {
  const report = path.join(root, 'build', `tests-${project}.json`);
  rmSync(report, { force: true });
  mkdirSync(path.dirname(report), { recursive: true });
  const args = tool(
    'vitest/vitest.mjs',
    ...['run', '--config', 'tests/vitest.config.ts', '--root', '.', '--project', project],
    ...['--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
  );
  const { isFine, output } = runNode(args, environment);
  if (!existsSync(report)) return { passed: 0, failed: 1, output };
  const { testResults } = JSON.parse(readFileSync(report, 'utf8'));
  const tests = testResults.flatMap(({ assertionResults }) => assertionResults);
  const passed = tests.filter(({ status }) => status === 'passed').length;
  const skipped = tests.filter(({ status }) => status !== 'passed' && status !== 'failed');
  const unloaded = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  const found = tests.length - passed + unloaded.length;
  const failed = found === 0 && (!isFine || passed === 0) ? 1 : found;
  const named = skipped.map(({ fullName }) => `skipped, counts as failed: ${fullName}\n`).join('');
  return { passed, failed, output: `${output}${named}` };
}

const isWanted = (name) => wanted.length === 0 || wanted.includes(name);

step('build', () => {
  checkNode();
  installPackages();
  build();
  return { passed: 1, failed: 0 };
});
for (const [name, args] of Object.entries(CHECKS)) {
  if (isWanted(name)) step(name, () => check(args));
}
for (const project of PROJECTS) {
  if (!isWanted(project)) continue;
  if (project === 'src') installPrograms();
  step(project, () =>
    vitest(project, project === 'browser' ? { BROWSER_PATH: findBrowser() } : undefined),
  );
}

console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;

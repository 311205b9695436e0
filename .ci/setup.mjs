// Brings the checkout into a state in which it runs: packages, build, browser. Does only what has changed.
import { spawnSync } from 'node:child_process';
import console from 'node:console';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { compressPage } from './compress.mjs';

export const root = path.join(import.meta.dirname, '..');

const LEAST_NODE = [20, 19];

/** Something that only the person at the keyboard can put right; the message says how. */
export class NeedsHelp extends Error {}

const inRoot = (...parts) => path.join(root, ...parts);
const isRoot = () => process.getuid?.() === 0;
const has = (program) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
const isDebian = () => existsSync('/etc/debian_version') && has('apt-get');

/** Runs a program with its output shown; true when it ended well. */
function run(program, args, environment = {}) {
  const options = { cwd: root, stdio: 'inherit', env: { ...process.env, ...environment } };
  return spawnSync(program, args, options).status === 0;
}

/** Runs a package's own program with the Node that runs this. */
function runTool(script, ...args) {
  return run(process.execPath, [inRoot('node_modules', script), ...args]);
}

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const isNewEnough = major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1]);
  if (isNewEnough) return;
  throw new NeedsHelp(
    `Node ${LEAST_NODE.join('.')} or newer is needed; this is ${process.versions.node}. See https://nodejs.org.`,
  );
}

function aptInstall(...packages) {
  if (!isRoot() || !isDebian()) return false;
  console.log(`Installing ${packages.join(', ')} with apt-get ...`);
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  run('apt-get', ['update', '-qq'], quiet);
  return run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], quiet);
}

// ---- packages

const BUILD_TOOLS = ['python3', 'make', 'g++'];

/** True when every package of the lock file that belongs on this machine is there in its version. */
function isInstalled() {
  const hidden = inRoot('node_modules', '.package-lock.json');
  if (!existsSync(hidden)) return false;
  const wanted = JSON.parse(readFileSync(inRoot('package-lock.json'), 'utf8')).packages;
  const found = JSON.parse(readFileSync(hidden, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([name, { version, optional }]) =>
      name === '' || optional === true || found[name]?.version === version,
  );
}

/** better-sqlite3 is machine code: it has to fit this Node, or nothing can be recorded. */
function databaseOpens() {
  const script = "new (require('better-sqlite3'))(':memory:').close()";
  return spawnSync(process.execPath, ['-e', script], { cwd: root }).status === 0;
}

function npm(...args) {
  const headers = path.join(path.dirname(process.execPath), '..');
  // Without a network node-gyp cannot fetch Node's headers, but often they lie beside Node.
  const hasHeaders = existsSync(path.join(headers, 'include', 'node', 'node.h'));
  const environment = hasHeaders ? { npm_config_nodedir: headers } : {};
  const script = process.env.npm_execpath;
  if (script?.endsWith('.js')) return run(process.execPath, [script, ...args], environment);
  return run('npm', args, environment);
}

function installOnce() {
  const isThere = npm('ci', '--include=dev', '--no-audit', '--no-fund');
  if (!isThere) return false;
  // Some versions of npm hold install scripts back.
  return databaseOpens() || (npm('rebuild', 'better-sqlite3') && databaseOpens());
}

export function installPackages() {
  const key = hashOf([inRoot('package-lock.json')], process.versions.modules, process.arch);
  const stamp = inRoot('node_modules', '.installed');
  if (readStamp(stamp) === key) return;
  if (!(isInstalled() && databaseOpens())) {
    console.log('Installing packages (only when they have changed) ...');
    if (!installOnce()) installWithTools();
  }
  writeFileSync(stamp, key);
}

function installWithTools() {
  const missing = BUILD_TOOLS.filter((tool) => !has(tool));
  if (missing.length > 0 && aptInstall(...BUILD_TOOLS) && installOnce()) return;
  const what =
    missing.length > 0
      ? `better-sqlite3 has to be compiled here and ${missing.join(', ')} is missing. Do this, then try again:\n\n` +
        `  sudo apt-get install -y ${BUILD_TOOLS.join(' ')}\n\n` +
        '(on another system: Python 3, make and a C++ compiler)'
      : 'See the messages of npm above. A network connection to the npm registry is needed the first time.';
  throw new NeedsHelp(`The packages could not be installed. ${what}`);
}

// ---- build

/** Hash of files and of whole folders, with their names. */
function hashOf(paths, ...words) {
  const hash = createHash('sha256');
  for (const word of words) hash.update(`${word}\0`);
  const add = (file) => hash.update(`${path.relative(root, file)}\0`).update(readFileSync(file));
  const walk = (place) => {
    const entries = readdirSync(place, { withFileTypes: true });
    for (const entry of entries.sort((one, other) => (one.name < other.name ? -1 : 1))) {
      const inner = path.join(place, entry.name);
      if (entry.isDirectory()) walk(inner);
      else if (entry.isFile()) add(inner);
    }
  };
  for (const each of paths) {
    if (path.extname(each) === '') walk(each);
    else add(each);
  }
  return hash.digest('hex');
}

function readStamp(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : null;
}

function buildPart(name, inputs, output, build) {
  const settings = ['package-lock.json', 'tsconfig.json', '.ci/setup.mjs', '.ci/compress.mjs'];
  const key = hashOf([...inputs, ...settings].map((each) => inRoot(each)));
  const stamp = inRoot('build', `.${name}-stamp`);
  if (readStamp(stamp) === key && existsSync(inRoot(output))) return;
  console.log(`Building the ${name} (only when it has changed) ...`);
  if (!build()) throw new NeedsHelp(`The ${name} could not be built. See the messages above.`);
  mkdirSync(inRoot('build'), { recursive: true });
  writeFileSync(stamp, key);
}

export function build() {
  buildPart('server', ['src', 'server'], 'build/server/main.js', () =>
    runTool('typescript/bin/tsc', '--build', 'server'),
  );
  buildPart('page', ['src', 'client'], 'build/page/index.html', buildPage);
}

/** Made beside the page and put in its place when whole: a server that is running never serves half a page. */
function buildPage() {
  const page = inRoot('build', 'page');
  const made = inRoot('build', `page-${process.pid}`);
  try {
    const options = ['--outDir', made, '--logLevel', 'warn'];
    if (!runTool('vite/bin/vite.js', 'build', 'client', ...options)) return false;
    compressPage(made);
    rmSync(page, { recursive: true, force: true });
    renameSync(made, page);
    return true;
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
}

// ---- programs that the tests compare with

/** What the tests call, and the Debian package that holds it. */
const PROGRAMS = {
  ebook2cw: 'ebook2cw',
  'multimon-ng': 'multimon-ng',
  sox: 'sox',
  'espeak-ng': 'espeak-ng',
};

/**
 * Installs what is missing where that is possible without asking. Where it is not, one line says so, and
 * the tests that need a program fail by name.
 */
export function installPrograms() {
  const missing = () => Object.keys(PROGRAMS).filter((each) => !has(each));
  const before = missing();
  if (before.length === 0) return;
  aptInstall(...before.map((each) => PROGRAMS[each]));
  const after = missing();
  if (after.length === 0) return;
  const packages = after.map((each) => PROGRAMS[each]).join(' ');
  console.error(
    `MISSING: ${after.join(', ')}; tests that need them fail. sudo apt-get install -y ${packages}`,
  );
}

// ---- browser

const BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a Chromium; installed where that is possible without asking. */
export function findBrowser() {
  const given = process.env.BROWSER_PATH;
  if (given !== undefined) {
    if (existsSync(given)) return given;
    throw new NeedsHelp(`There is no browser at BROWSER_PATH=${given}.`);
  }
  const there = () => BROWSERS.find((each) => existsSync(each));
  const found = there() ?? (aptInstall('chromium') ? there() : undefined);
  if (found !== undefined) return found;
  throw new NeedsHelp(
    'The browser tests need Chromium. Do one of these, then try again:\n\n' +
      '  sudo apt-get install -y chromium\n' +
      '  BROWSER_PATH=/path/to/chromium npm test\n',
  );
}

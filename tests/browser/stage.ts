import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';

const ROOT = path.join(import.meta.dirname, '..', '..');
const SERVER = path.join(ROOT, 'build', 'server', 'main.js');

/** Where Chromium is. */
const BROWSER_PATH = process.env['BROWSER_PATH'] ?? '/usr/bin/chromium';

/** How Chromium is started. */
export const LAUNCH = {
  executablePath: BROWSER_PATH,
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--autoplay-policy=no-user-gesture-required',
  ],
};

/** When the flights of the tests begin. */
export const NOON_MS = Date.UTC(2026, 10, 25, 12);

export const TABLET = { width: 1180, height: 820 };
export const PHONE = { width: 390, height: 844 };

/** Without a browser nothing here can be shown to hold: that is a failure, not a reason to skip. */
function needBrowser(): void {
  if (existsSync(BROWSER_PATH)) return;
  throw new Error(
    `There is no Chromium at ${BROWSER_PATH}. Install it (sudo apt-get install -y chromium) or set BROWSER_PATH.`,
  );
}

/** A folder of its own, gone after the tests of the file. */
export function ownDir(): string {
  const dir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-browser-'));
  afterAll(() => {
    rmSync(dir, { recursive: true, force: true, maxRetries: 5 });
  });
  return dir;
}

/** The built server as a process of its own. */
export interface Served {
  readonly address: string;
  readonly port: number;
  end(signal: NodeJS.Signals): Promise<void>;
}

/** Starts the built server; port 0 is a free one. Rejects with what it said when it gives up. */
function startServer(dataDir: string, port = 0): Promise<Served> {
  if (!existsSync(SERVER))
    throw new Error('build/server/main.js is missing: "npm test" builds it first.');
  const child: ChildProcess = spawn(process.execPath, [SERVER], {
    cwd: ROOT,
    env: { ...process.env, PORT: String(port), DATA_DIR: dataDir },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((resolve) =>
    child.once('close', () => {
      resolve();
    }),
  );
  let output = '';
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      output += chunk.toString('utf8');
      const found = /http:\/\/127\.0\.0\.1:(\d+)/.exec(output);
      if (found === null) return;
      resolve({
        address: found[0],
        port: Number(found[1]),
        end: (signal) => {
          child.kill(signal);
          return ended;
        },
      });
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    void ended.then(() => {
      reject(new Error(`The server ended: ${output}`));
    });
  });
}

/** How a page is opened. */
export interface Opening {
  readonly size?: { readonly width: number; readonly height: number };
  /** Default: the cautions have been read and the voice is off. `null`: a device that is new. */
  readonly settings?: object | null;
  /** Default: the page’s clock starts at `NOON_MS` and can be moved. False: the clock of this machine. */
  readonly hasOwnClock?: boolean;
  readonly startMs?: number;
  /** A finger instead of a mouse. */
  readonly hasTouch?: boolean;
  /** Run in the page before anything of it. */
  readonly scripts?: readonly (() => void)[];
  readonly context?: BrowserContext;
  /** Another browser than the one of the stage: one with a microphone. */
  readonly browser?: Browser;
  /** After the `#`. */
  readonly at?: string;
}

/** A server, a browser, and what went wrong in any of its pages. */
export interface Stage {
  readonly address: string;
  readonly served: Served;
  readonly browser: Browser;
  readonly dataDir: string;
  open(opening?: Opening): Promise<Page>;
  /** The server as it was, on the same port and records. */
  restartServer(): Promise<void>;
  /** To the end of the test the browser may put this into the console: the test itself brings it about. */
  expectFault(fault: RegExp): void;
}

/** What the browser itself says when a server is gone: no fault of the page. */
export const SERVER_GONE =
  /net::ERR_(CONNECTION|EMPTY|SOCKET|INTERNET|NETWORK)|WebSocket connection to .* failed/;

/** Notes whatever a page puts into its console as an error, and what its security policy stops. */
export function noteFaults(context: BrowserContext, faults: string[]): void {
  context.on('console', (message) => {
    const isPolicy = /Content Security Policy|Content-Security-Policy/.test(message.text());
    if (message.type() === 'error' || isPolicy)
      faults.push(`${message.text()} (${message.location().url})`);
  });
  context.on('weberror', (error) => {
    faults.push(`not caught: ${error.error().stack ?? error.error().message}`);
  });
}

const FIRST_SETTINGS = { cautionsReadAtMs: NOON_MS, voiceOn: false, palette: 'day' };

/** Prepares a context: its settings, its clock. */
async function dress(context: BrowserContext, opening: Opening): Promise<void> {
  if (opening.hasOwnClock !== false)
    await context.clock.install({ time: opening.startMs ?? NOON_MS });
  for (const script of opening.scripts ?? []) await context.addInitScript(script);
  if (opening.settings === null) return;
  await context.addInitScript(
    (settings: string) => {
      if (location.protocol !== 'http:') return;
      const place = 'spoken-radial.settings';
      if (localStorage.getItem(place) === null) localStorage.setItem(place, settings);
    },
    JSON.stringify(opening.settings ?? FIRST_SETTINGS),
  );
}

/** Sets a server and a browser up for the tests of a file; every test fails that leaves a fault behind. */
export function setStage(): Stage {
  const dataDir = ownDir();
  let served: Served | null = null;
  let browser: Browser | null = null;
  let expected: RegExp | null = null;
  const faults: string[] = [];

  const theServer = (): Served => {
    if (served === null) throw new Error('The server has not been started.');
    return served;
  };
  const theBrowser = (): Browser => {
    if (browser === null) throw new Error('The browser has not been started.');
    return browser;
  };

  beforeAll(async () => {
    needBrowser();
    served = await startServer(dataDir);
    browser = await chromium.launch(LAUNCH);
  });
  afterEach(async () => {
    const seen = faults.splice(0).filter((fault) => expected?.test(fault) !== true);
    expected = null;
    for (const context of browser?.contexts() ?? []) await context.close();
    expect(seen, 'errors in the console of a page').toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
    await served?.end('SIGTERM');
  });

  return {
    get address() {
      return theServer().address;
    },
    get served() {
      return theServer();
    },
    get browser() {
      return theBrowser();
    },
    dataDir,
    async open(opening = {}) {
      const context =
        opening.context ??
        (await (opening.browser ?? theBrowser()).newContext({
          viewport: opening.size ?? TABLET,
          hasTouch: opening.hasTouch ?? false,
          locale: 'en-GB',
          timezoneId: 'UTC',
        }));
      if (opening.context === undefined) {
        noteFaults(context, faults);
        await dress(context, opening);
      }
      const page = await context.newPage();
      page.setDefaultTimeout(15_000);
      await page.goto(`${theServer().address}/${opening.at ?? ''}`);
      return page;
    },
    async restartServer() {
      served = await startServer(dataDir, theServer().port);
    },
    expectFault(fault) {
      expected = fault;
    },
  };
}

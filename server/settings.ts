/** What the environment may set. */
export interface Settings {
  readonly port: number;
  readonly host: string;
  readonly dataDir: string;
}

/** Reads `PORT` (4780), `HOST` (127.0.0.1) and `DATA_DIR` (`./data`). Throws where one makes no sense. */
export function settingsFrom(environment: NodeJS.ProcessEnv): Settings {
  const text = environment['PORT'] ?? '4780';
  const port = /^\d{1,5}$/.test(text) ? Number(text) : NaN;
  if (!(port <= 65_535)) throw new Error(`PORT must be a number from 0 to 65535, not "${text}".`);
  return {
    port,
    host: environment['HOST'] ?? '127.0.0.1',
    dataDir: environment['DATA_DIR'] ?? 'data',
  };
}

/** A station that sends an ident. */
export interface Sender {
  readonly name: string;
  readonly frequencyMhz: number | null;
  /** From where one is, if that is known. */
  readonly distanceNm: number | null;
}

/** Where one is, about. */
export interface Near {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

const PATIENCE_MS = 4000;

const MOST = 3;

/** Stations that send this ident, nearest first; null when the server's list is not at hand. */
export async function whoSends(
  ident: string,
  near: Near | null,
): Promise<readonly Sender[] | null> {
  const query = new URLSearchParams({ q: ident, limit: '50' });
  if (near !== null) {
    query.set('nearLatitudeDeg', String(near.latitudeDeg));
    query.set('nearLongitudeDeg', String(near.longitudeDeg));
  }
  try {
    const answer = await fetch(`/api/stations?${query}`, {
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (!answer.ok) return null;
    return readSenders(await answer.json(), ident).slice(0, MOST);
  } catch {
    return null;
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

const numberOrNull = (value: unknown): number | null => (typeof value === 'number' ? value : null);

function readSenders(body: unknown, ident: string): readonly Sender[] {
  const rows: unknown = isRecord(body) ? body['stations'] : null;
  if (!Array.isArray(rows)) return [];
  return rows
    .filter(isRecord)
    .filter((row) => row['ident'] === ident)
    .map((row) => ({
      name: typeof row['name'] === 'string' && row['name'] !== '' ? row['name'] : ident,
      frequencyMhz: numberOrNull(row['frequencyMhz']),
      distanceNm: numberOrNull(row['distanceNm']),
    }));
}

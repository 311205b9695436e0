import { readFileSync } from 'node:fs';
import { validateXML } from 'xmllint-wasm';

const schema = readFileSync(new URL('reference/data/gpx-1.1.xsd', import.meta.url), 'utf8');

/** What the GPX 1.1 schema has against a text, by libxml2; empty when it is valid. */
export async function gpxFaults(text: string): Promise<readonly string[]> {
  const { errors } = await validateXML({ xml: text, schema });
  return errors.map(({ message }) => message);
}

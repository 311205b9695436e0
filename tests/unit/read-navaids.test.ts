import { describe, expect, it } from 'vitest';
import { readNavaids } from '../../src/station/library/read-navaids.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';

const HEAD =
  'id,ident,name,type,frequency_khz,latitude_deg,longitude_deg,elevation_ft,slaved_variation_deg,usageType';
const QEV = '1,QEV,Quiet Evening,VOR-DME,113350,46.5,-21.25,410,-7.0,LO';
const ZUP = '2,ZUP,Zero Up,VOR,112100,46.1,-20.2,0,-7.0,TERMINAL';

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const utf8 = (bytes: Uint8Array): string | null => {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
};
const bytesOf = (csv: string, encoding: BufferEncoding = 'utf8') =>
  new Uint8Array(Buffer.from(csv, encoding));
const read = (csv: string, encoding?: BufferEncoding, library: readonly LibraryStation[] = []) =>
  readNavaids(
    bytesOf(csv, encoding),
    utf8,
    new Map(library.map((each) => [each.id, each])),
    2026.9,
  );
const taken = (csv: string, encoding?: BufferEncoding) => {
  const answer = read(csv, encoding);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer.value;
};
const refusal = (csv: string): string => {
  const answer = read(csv);
  return answer.ok ? 'taken' : JSON.stringify(answer.problem);
};

describe('an open navaid CSV', () => {
  it.each([
    ['with a byte order mark', `\uFEFF${HEAD}\n${QEV}\n${ZUP}\n`],
    ['with CRLF', `${HEAD}\r\n${QEV}\r\n${ZUP}\r\n`],
    ['without a line break at its end', `${HEAD}\n${QEV}\n${ZUP}`],
    ['with semicolons', [HEAD, QEV, ZUP].join('\n').replaceAll(',', ';')],
    ['with tabs', [HEAD, QEV, ZUP].join('\n').replaceAll(',', '\t')],
    [
      'with semicolons and decimal commas',
      [HEAD, QEV, ZUP]
        .join('\n')
        .replaceAll(',', ';')
        .replace(/(\d)\.(\d)/g, '$1,$2'),
    ],
    [
      'with blanks around the names of its columns',
      `${HEAD.replaceAll(',', ' , ')}\n${QEV}\n${ZUP}`,
    ],
    ['with an empty field more on each line', `${HEAD}\n${QEV},\n${ZUP},,`],
  ])('is read %s', (_what, csv) => {
    const { changes, skipped, warnings } = taken(csv);
    expect(skipped).toEqual([]);
    expect(warnings).toEqual([]);
    expect(
      changes.map(({ ident, latitudeDeg, declinationDegEast }) => [
        ident,
        latitudeDeg,
        declinationDegEast,
      ]),
    ).toEqual([
      ['QEV', 46.5, -7],
      ['ZUP', 46.1, -7],
    ]);
  });

  it('tells what is wrong with each line that was skipped, by its number, and reads on', () => {
    const { changes, skipped } = taken(
      [
        HEAD,
        '7,"QEV,Stray,VOR,113350,46,-21,0,0,LO',
        QEV,
        '8,X,short',
        `${ZUP},more,fields`,
        '',
        '9,LAT,Beyond,VOR,113350,91,-21,0,0,LO',
        '10,THO,Thousands,VOR,113350,46,-21,"1,200",0,LO',
        ZUP,
      ].join('\n'),
    );
    expect(changes.map(({ ident }) => ident)).toEqual(['QEV', 'ZUP']);
    expect(skipped.map(({ line }) => line)).toEqual([2, 4, 5, 7, 8]);
    const [stray, short, long, place, height] = skipped.map(({ reason }) => reason);
    expect(stray).toContain('never closed');
    expect(short).toContain('expected 10 columns as on the first line, got 3');
    expect(long).toContain('got 12');
    expect(place).toMatch(/latitude_deg: expected .*got 91/);
    // A comma in feet could part the thousands: 1.2 ft would be a guess.
    expect(height).toMatch(/elevation_ft: expected .*got 1,200/);
  });

  it('takes every line of a file that is not UTF-8 and says so', () => {
    const { changes, warnings } = taken(
      [HEAD, QEV, ZUP.replace('Zero Up', 'Zéro Up')].join('\n'),
      'latin1',
    );
    expect(changes[1]?.name).toBe('Zéro Up');
    expect(warnings).toEqual([expect.stringMatching(/Not UTF-8 on line 3: read as Windows-1252/)]);
  });

  it('says that there is nothing under its first line', () => {
    const { added, skipped, warnings } = taken(`${HEAD}\n`);
    expect({ added, skipped }).toEqual({ added: 0, skipped: [] });
    expect(warnings).toEqual([expect.stringContaining('no line under')]);
  });

  it.each([
    ['nothing', '', 'got nothing|"got":"nothing"'],
    ['empty lines alone', '\n\r\n\n', '"got":"nothing"'],
    ['other columns', 'a,b\n1,2\n', 'none called id, ident'],
    ['a column twice', `${HEAD},ident\n${QEV},X\n`, 'more than one called ident'],
    ['a first line that is broken', `"${HEAD}\n${QEV}\n`, 'line 1: a quote'],
  ])('is refused where it is %s', (_what, csv, words) => {
    expect(refusal(csv)).toMatch(new RegExp(words));
  });

  it('is heard of as it is read, up to its end', () => {
    const lines = Array.from({ length: 5000 }, (_, at) => QEV.replace('1', String(at + 10)));
    const heard: number[] = [];
    readNavaids(bytesOf([HEAD, ...lines].join('\n')), utf8, new Map(), 2026.9, (_lines, fraction) =>
      heard.push(fraction),
    );
    expect(heard.length).toBeGreaterThan(3);
    expect(heard).toEqual(heard.toSorted((one, other) => one - other));
    expect(heard.at(-1)).toBeGreaterThan(0.9);
  });

  it('changes nothing the second time, and leaves alone what was put right by hand', () => {
    const csv = `${HEAD}\n${QEV}\n${ZUP}\n`;
    const first = taken(csv).changes;
    expect(read(csv, 'utf8', first)).toMatchObject({ value: { changes: [], unchanged: 2 } });
    const byHand = first.map((each) => ({ ...each, elevationFt: 999, isByHand: true }));
    const again = read(csv, 'utf8', byHand);
    expect(again).toMatchObject({ value: { changes: [], unchanged: 0 } });
    expect(JSON.stringify(again)).toContain('changed by hand here and is kept so');
  });

  it.each([
    ['at the north pole', '90', '0'],
    ['on the antimeridian', '10', '180'],
    ['on the antimeridian from the other side', '10', '-180'],
  ])('gives a station %s a declination in figures', (_what, latitude, longitude) => {
    const { changes } = taken(`${HEAD}\n5,POL,Far,VOR,113350,${latitude},${longitude},0,,LO\n`);
    const [station] = changes;
    expect(station?.declinationFrom).toBe('model');
    expect(Math.abs(station?.declinationDegEast ?? Number.NaN)).toBeLessThanOrEqual(180);
  });
});

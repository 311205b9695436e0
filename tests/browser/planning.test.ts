import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { gpxFaults } from '../gpx-schema.ts';
import { lookOver } from './look-over.ts';
import { NOON_MS, ownDir, setStage, type Opening } from './stage.ts';

const stage = setStage();

/** Invented stations in the open North Atlantic, and rows that are none. */
const CSV = [
  'id,ident,name,type,frequency_khz,latitude_deg,longitude_deg,elevation_ft,slaved_variation_deg,usageType',
  '1,QEV,Quiet Evening,VOR-DME,113350,46.5,-27.3,410,-8.0,LO',
  '2,ZUP,Zero Up,VOR-DME,112100,46.4,-25.6,0,-8.0,LO',
  '3,WOK,Without DME,VOR,114700,46.9,-26.4,0,,LO',
  '4,AB,Beacon,NDB,350,46,-26,,,LO',
  '5,ODD,Odd tenth,VOR,111550,46,-26,0,0,LO',
].join('\n');

const AS_THE_DEVICE: Opening = {
  settings: { cautionsReadAtMs: NOON_MS, voiceOn: false, palette: 'auto' },
};

async function bringIn(page: Page, csv = CSV): Promise<void> {
  await page.setInputFiles('#navaid-file', {
    name: 'navaids.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(csv),
  });
}

async function stationsIn(opening: Opening = {}): Promise<Page> {
  const page = await stage.open({ at: '#/stations', ...opening });
  await page.getByText('No stations yet').waitFor();
  await bringIn(page);
  await page.getByText('3 added').waitFor();
  return page;
}

async function routeIn(page: Page): Promise<void> {
  await page.goto(`${stage.address}/#/route`);
  await page.getByLabel('Start').fill('46.5 N 28 W');
  await page.getByLabel('Destination').fill('ZUP 098 radial, 14 miles');
  await page.getByLabel('Altitude ft', { exact: true }).fill('4500');
  await page.getByLabel('Forecast wind from').fill('330');
  await page.getByLabel('Wind speed').fill('15');
  await page.getByLabel('Fuel for an hour').fill('24');
  await page.getByRole('button', { name: 'Propose the stations' }).click();
  await page.getByRole('heading', { name: 'Leg 1: to QEV' }).waitFor();
}

describe('the stations of the device', () => {
  test('come in from a file, with a word on every line that was skipped, and once only', async () => {
    const page = await stationsIn();
    await page.getByText('Which lines were skipped').click();
    await page.getByText('a beacon without radials').waitFor();
    await page.getByText('even tenth').waitFor();
    await bringIn(page);
    await page.getByText('3 the same already').waitFor();
    await bringIn(page, 'a,b\n1,2\n');
    await page.getByText('no list of navaids').waitFor();
    expect(await page.getByText('Of 3 here').count()).toBe(1);
  });

  test('come in from a file that is dropped on the box', async () => {
    const page = await stage.open({ at: '#/stations' });
    const dropped = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'navaids.csv', { type: 'text/csv' }));
      return data;
    }, CSV);
    await page.dispatchEvent('.drop', 'drop', { dataTransfer: dropped });
    await page.getByText('3 added').last().waitFor();
    expect(await page.getByText('Of 3 here').count()).toBe(1);
  });

  test('are found, put right and taken out, with a way back', async () => {
    const page = await stationsIn();
    const find = page.getByLabel('Ident, name or frequency');
    await find.fill('wok');
    await page.getByText('No declination is published for WOK').waitFor();
    await page.getByRole('button', { name: 'Put right: WOK' }).click();
    await page.getByLabel('Station declination').fill('8 W');
    await page.getByLabel('Frequency MHz').fill('114.72');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('in steps of 0.05').waitFor();
    await page.getByLabel('Frequency MHz').fill('114.75');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('114.75').waitFor();
    await page.getByRole('button', { name: 'Take out: WOK' }).click();
    await page.getByText('None. Write less').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('114.75').waitFor();
    await page.reload();
    await find.fill('wok');
    await page.getByText('114.75').waitFor();
  });

  test('come in from files that are not quite right, with a word on what is not', async () => {
    const page = await stationsIn();
    await bringIn(page, CSV.replace('\n2,', '\n9,"QEV,Stray\n2,').replaceAll(/\n(\d)/g, '\nb$1'));
    await page.getByText('3 added').waitFor();
    await page.getByText('3 skipped').waitFor();
    await page.getByText('Which lines were skipped').click();
    await page.getByText('a quote (") is opened and never closed. Line 3').waitFor();
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('Of 3 here').waitFor();
    const latin = CSV.replace('Quiet', 'Quiét').replaceAll(',', ';').replaceAll('\n', '\r\n');
    await page.setInputFiles('#navaid-file', {
      name: 'latin.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(latin, 'latin1'),
    });
    await page.getByText('Not UTF-8 on line 2: read as Windows-1252').waitFor();
    await page.getByLabel('Ident, name or frequency').fill('quiét');
    await page.getByText('Quiét Evening').waitFor();
    await bringIn(page, `${CSV.split('\n')[0] ?? ''}\n`);
    await page.getByText('no line under the names').waitFor();
    await bringIn(page, '');
    await page.getByText('got nothing. Nothing was taken.').waitFor();
    await bringIn(page, CSV.replace('ident', 'id'));
    await page.getByText('more than one called id').waitFor();
    const large = path.join(ownDir(), 'large.csv');
    writeFileSync(large, '');
    truncateSync(large, 100 * 1024 * 1024);
    await page.setInputFiles('#navaid-file', large);
    await page.getByText('This file has 100 MB; at most 24 MB are read').waitFor();
    await page.getByText('Of 3 here').waitFor();
  });

  test('show what else has the ident, the nearest first, and keep the keyboard where it can undo', async () => {
    const page = await stationsIn();
    await bringIn(
      page,
      [
        CSV,
        '11,QEV,Far away,VOR,112100,-46,120,0,0,LO',
        '12,QEV,Nearer,VOR,114900,40,-30,0,0,LO',
        '13,ABC,Not qev,VOR,114900,46.5,-27.3,0,0,LO',
      ].join('\n'),
    );
    await page.getByText('3 added').last().waitFor();
    await page.getByLabel('Ident, name or frequency').fill('qev');
    await page.getByLabel('Nearest to').fill('46.5 N 27.3 W');
    const rows = page.locator('.found > .station');
    await expect
      .poll(() => rows.locator('.ident').allTextContents())
      .toEqual(['QEV', 'QEV', 'QEV', 'ABC']);
    await rows.first().getByText('Elsewhere: same ident 2, same frequency 0').click();
    const others = rows.first().locator('.elsewhere li');
    await expect
      .poll(async () =>
        (await others.allInnerTexts()).map((each) => /Nearer|Far away/.exec(each)?.[0]),
      )
      .toEqual(['Nearer', 'Far away']);
    await page.getByRole('button', { name: 'Take out: QEV' }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByText('QEV taken out.').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Undo');
    await page.keyboard.press('Enter');
    await expect.poll(() => rows.count()).toBe(4);
  });

  test('look right at both sizes, day and night, and can be used without seeing them', async () => {
    const page = await stationsIn(AS_THE_DEVICE);
    await page.getByLabel('Ident, name or frequency').fill('o');
    expect(await lookOver(page, 'stations')).toEqual([]);
  });
});

describe('a whole flight', () => {
  test('is proposed by the stations in reach, changed, undone, and flown with one tap', async () => {
    const page = await stationsIn();
    await routeIn(page);
    const heads = page.getByRole('heading', { level: 3 });
    expect(await heads.allTextContents()).toEqual([
      'Leg 1: to QEV',
      'Leg 2: from QEV',
      'Leg 3: to ZUP',
      'Leg 4: from ZUP',
    ]);
    await page.getByLabel('Put a station in').fill('WOK');
    await page.getByRole('button', { name: 'Put in: WOK' }).click();
    await page.getByText('No DME: by the clock').first().waitFor();
    expect(await heads.count()).toBe(6);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => heads.count()).toBe(4);
    await page.reload();
    await expect.poll(() => heads.count()).toBe(4);
    await page.getByRole('button', { name: 'Fly it' }).click();
    await page.waitForURL(/#\/fly\//);
    await page.getByText('QEV').first().waitFor();
  });

  test('tells the change-over by a station off to the side, and flies each leg in its own wind', async () => {
    const page = await stationsIn();
    await routeIn(page);
    await page.getByText(/Second stations tell the place at \d point/).waitFor();
    // WOK stands 27 NM north of it: the radial that leads there is a southerly one.
    const row = page.getByRole('row', { name: /Change over/ });
    expect(await row.first().innerText()).toMatch(/1[789]\d of WOK 114\.70[\s\S]*±1\.\d NM/);
    await page.getByLabel('Wind on leg 3').fill('090/40');
    await page.getByRole('button', { name: 'Fly it' }).click();
    await page.waitForURL(/#\/fly\//);
    const id = page.url().split('/').at(-1) ?? '';
    const eventsOf = async (): Promise<string> =>
      (await fetch(`${stage.address}/api/flights/${id}/events`)).text();
    await expect.poll(eventsOf).toContain('"legWinds":[{"legIndex":2,"wind":{"fromDegTrue":90');
  });

  test('says what would be needed where no station is in reach', async () => {
    const page = await stationsIn();
    await routeIn(page);
    await page.getByLabel('Destination').fill('46.4 N 10 W');
    await page.getByRole('button', { name: 'Propose the stations' }).click();
    await page.getByText('none is near enough').waitFor();
    await page.getByLabel('Wind speed').fill('120');
    await page.getByText('95 kt').last().waitFor();
  });

  test('leaves and comes back as GPX that is valid by its schema', async () => {
    const page = await stationsIn();
    await routeIn(page);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as GPX' }).click();
    const text = readFileSync(await (await saving).path(), 'utf8');
    expect(await gpxFaults(text)).toEqual([]);
    await page.getByRole('button', { name: 'New flight' }).click();
    await page.setInputFiles('#gpx-file', {
      name: 'route.gpx',
      mimeType: 'application/gpx+xml',
      buffer: Buffer.from(text),
    });
    await page.getByText('Taken in. Give an altitude.').waitFor();
    await page.getByLabel('Altitude ft', { exact: true }).fill('4500');
    await page.getByRole('heading', { name: 'Leg 4: from ZUP' }).waitFor();
  });

  test('looks right at both sizes, day and night, and can be used without seeing it', async () => {
    const page = await stationsIn(AS_THE_DEVICE);
    await routeIn(page);
    expect(await lookOver(page, 'route')).toEqual([]);
  });
});

// How well the tracking flies, notices faults and nears the bound, on few flights; the tables have their own scripts.
import { boundFigures } from './track-bound.ts';
import { costFigures } from './track-cost.ts';
import { cleanFigures, faultFigures } from './track-faults.ts';
import { loopFigures } from './track-loop.ts';
import { passageFigures } from './track-passage.ts';
import { timeFigures } from './track-time.ts';
import { report } from './report.ts';

const FLIGHTS = 40;
const SEED = 20;
const quiet = (): void => undefined;
const how = { flights: FLIGHTS, seed: SEED, intervalS: 60, testEvery: 3, hasDme: true };

const figures = [
  ...loopFigures(60, FLIGHTS, SEED, false, quiet),
  ...cleanFigures(how, quiet),
  ...faultFigures(how, quiet),
  ...boundFigures(FLIGHTS, SEED, quiet).filter(({ name }) =>
    name.includes('5 readings every 60 s'),
  ),
  ...passageFigures(FLIGHTS, SEED).filter(({ name }) => name.includes('every 60 s')),
  ...timeFigures(FLIGHTS, SEED, 60),
  ...costFigures(),
];
for (const { name, value, goal } of figures) {
  report({ name: `tracking: ${name}`, value, unit: '', ...(goal === null ? {} : { goal }) });
}

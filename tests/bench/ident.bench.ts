// How well idents are heard, on few clips; the table in docs/accuracy.md comes from ident-detector.ts.
import { identCostFigures } from './ident-cost.ts';
import { canMake, emptyFigures, stationFigures } from './ident-detector.ts';
import { EMPTY_CONDITIONS, STATION_LINES } from './ident-lines.ts';
import { programFigures } from './ident-programs.ts';
import { report } from './report.ts';

const CLIPS = 10;
const SEED = 30;
const TRIALS = 20;
const quiet = (): void => undefined;

const figures = [
  ...STATION_LINES.filter(({ condition }) => canMake(condition)).flatMap((line) =>
    stationFigures(line, CLIPS, SEED, quiet),
  ),
  ...EMPTY_CONDITIONS.filter(canMake).flatMap((each) =>
    emptyFigures(each, CLIPS, SEED, TRIALS, quiet),
  ),
  ...identCostFigures(CLIPS, SEED),
  ...programFigures(CLIPS, SEED),
];
for (const figure of figures) report({ ...figure, name: `ident: ${figure.name}` });

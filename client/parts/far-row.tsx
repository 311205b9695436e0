import type { JSX } from 'preact';
import { isWindLight } from '../../src/procedure/phrases.ts';
import type { AnswerNow } from './answer-now.ts';
import type { Deck } from './deck.ts';
import { minutesSeconds, oneDecimal, windFigures } from './figures.ts';

/** After this long the distance is no longer read but reckoned. */
const FRESH_S = 5;

/** How far, how long and the wind, each with how sure it is. */
export function FarRow({
  deck,
  now,
}: {
  readonly deck: Deck;
  readonly now: AnswerNow;
}): JSX.Element {
  const isLive = now.ageS > FRESH_S && deck.foresight.value !== null;
  const howFar = isLive ? (deck.foresight.value?.howFar ?? now.advice.howFar) : now.advice.howFar;
  const wind = now.advice.estimate.wind;
  const live = isLive ? ', expected' : '';
  return (
    <dl class="far">
      <Figure
        name="To go"
        value={howFar.toGoNm === null ? null : oneDecimal(howFar.toGoNm)}
        unit={howFar.toGoNm === null ? noDistance(deck) : `NM to go${band(howFar.sdNm, 1)}${live}`}
        isDim={isLive}
      />
      <Figure
        name="Time"
        value={howFar.toGoS === null ? null : minutesSeconds(howFar.toGoS)}
        unit={
          howFar.toGoS === null
            ? 'time not known yet'
            : `${endOf(deck)}${howFar.groundSpeedKt === null ? '' : `, at ${Math.round(howFar.groundSpeedKt)} kt`}`
        }
        isDim={isLive}
      />
      <Figure
        name="Wind"
        value={
          wind === null
            ? null
            : isWindLight(wind)
              ? 'light'
              : windFigures(wind.fromDegMag, wind.speedKt)
        }
        unit={wind === null ? 'wind not seen yet' : `wind from, kt${band(wind.sdKt, 0)}`}
        isDim={false}
      />
    </dl>
  );
}

interface FigureProps {
  readonly name: string;
  readonly value: string | null;
  readonly unit: string;
  readonly isDim: boolean;
}

function Figure({ name, value, unit, isDim }: FigureProps): JSX.Element {
  return (
    <div>
      <dt class="hidden">{name}</dt>
      <dd class={isDim || value === null ? 'v dim' : 'v'}>{value ?? '–'}</dd>
      <dd class="u">{unit}</dd>
    </div>
  );
}

function band(sd: number | null, places: 0 | 1): string {
  if (sd === null) return '';
  const least = places === 1 ? 0.1 : 1;
  return ` ± ${Math.max(least, sd).toFixed(places)}`;
}

function noDistance(deck: Deck): string {
  const leg = deck.leg.value;
  if (leg?.direction === 'from' && leg.endDmeNm === undefined) return 'no end given for this leg';
  return leg?.station.hasDme === false
    ? 'no DME: distance not known yet'
    : 'distance not known yet';
}

function endOf(deck: Deck): string {
  const leg = deck.leg.value;
  const endDmeNm = leg?.endDmeNm ?? 0;
  if (endDmeNm > 0) return `to DME ${oneDecimal(endDmeNm)}`;
  return 'to the station';
}

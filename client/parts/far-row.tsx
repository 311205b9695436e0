import type { JSX } from 'preact';
import { isWindLight, windDirectionDeg } from '../../src/procedure/phrases.ts';
import type { HowFar, WindSeen } from '../../src/track/guidance.ts';
import { guide } from '../../src/track/guide.ts';
import type { AnswerNow } from './answer-now.ts';
import type { Deck } from './deck.ts';
import { minutesSeconds, oneDecimal, threeFigures, windFigures } from './figures.ts';

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
  const foresight = deck.foresight.value;
  const live = now.ageS > FRESH_S ? foresight : null;
  const howFar = live?.howFar ?? now.advice.howFar;
  const { wind, driftDeg } = now.advice.estimate;
  return (
    <dl class="far">
      <Figure
        name="To go"
        value={howFar.toGoNm === null ? null : oneDecimal(howFar.toGoNm)}
        unit={[
          howFar.toGoNm === null ? noDistance(deck) : `NM to go${band(howFar.sdNm, 1)}`,
          speedWords(howFar),
        ]}
        isDim={live !== null}
      />
      <Figure
        name="Time"
        value={howFar.toGoS === null ? null : minutesSeconds(howFar.toGoS)}
        unit={[howFar.toGoS === null ? 'no time yet' : endWords(deck), timeBand(howFar)]}
        isDim={live !== null}
      />
      <Figure
        name="Wind"
        value={wind === null ? null : windShown(wind)}
        unit={[wind === null ? 'no wind yet' : windUnit(wind), driftWords(driftDeg)]}
        isDim={false}
      />
    </dl>
  );
}

function windShown(wind: WindSeen): string {
  return isWindLight(wind) ? 'light' : windFigures(windDirectionDeg(wind.fromDegMag), wind.speedKt);
}

/** What is light has no direction to be from. */
function windUnit(wind: WindSeen): string {
  return `${isWindLight(wind) ? 'wind' : 'wind from'}, kt${band(wind.sdKt, 0)}`;
}

interface FigureProps {
  readonly name: string;
  readonly value: string | null;
  /** A line each; an empty one is left out. */
  readonly unit: readonly string[];
  readonly isDim: boolean;
}

function Figure({ name, value, unit, isDim }: FigureProps): JSX.Element {
  return (
    <div>
      <dt class="hidden">{name}</dt>
      <dd class={isDim || value === null ? 'v dim' : 'v'}>{value ?? '–'}</dd>
      {unit.map((line) => (line === '' ? null : <dd class="u">{line}</dd>))}
    </div>
  );
}

function band(sd: number | null, places: 0 | 1): string {
  if (sd === null) return '';
  const least = places === 1 ? 0.1 : 1;
  return `, ±\u00a0${Math.max(least, sd).toFixed(places)}`;
}

function noDistance(deck: Deck): string {
  const leg = deck.leg.value;
  if (leg?.direction === 'from' && !leg.arc && leg.endDmeNm === undefined)
    return 'no end given for this leg';
  return leg?.station.hasDme === false ? 'no DME: no distance yet' : 'no distance yet';
}

function endWords(deck: Deck): string {
  const endDmeNm = deck.leg.value?.endDmeNm ?? 0;
  const place = endDmeNm > 0 ? `to DME ${oneDecimal(endDmeNm)}` : 'to the station';
  return arcEnd(deck) ?? place;
}

function speedWords({ groundSpeedKt, sdKt }: HowFar): string {
  return groundSpeedKt === null ? '' : `at ${Math.round(groundSpeedKt)} kt${band(sdKt, 0)}`;
}

/** To five seconds: nobody times a leg more finely. */
function timeBand({ toGoS, sdS }: HowFar): string {
  if (toGoS === null || sdS === null) return '';
  return `±\u00a0${minutesSeconds(5 * Math.max(1, Math.round(sdS / 5)))}`;
}

function driftWords(driftDeg: number | null): string {
  const whole = Math.round(Math.abs(driftDeg ?? 0));
  if (driftDeg === null || whole === 0) return '';
  return `drift ${whole}° ${driftDeg < 0 ? 'left' : 'right'}`;
}

/** On an arc: the turn onto it, then the radial where it ends; null on any other leg. */
function arcEnd(deck: Deck): string | null {
  const arc = deck.leg.value?.arc;
  const { estimate } = deck.state.value;
  if (arc === undefined || estimate === null) return null;
  const isJoining = guide(estimate, estimate.leg).arc?.isJoining ?? true;
  return isJoining ? 'to the turn' : `to radial ${threeFigures(arc.toRadialDeg)}`;
}

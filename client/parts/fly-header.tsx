import type { JSX } from 'preact';
import type { DmeArc, Leg } from '../../src/leg/leg.ts';
import { hasGesture } from '../sound/gesture.ts';
import { nowMs } from './clock.ts';
import type { Deck } from './deck.ts';
import { ago, feet, megahertz, oneDecimal, threeFigures } from './figures.ts';
import { loadMarks } from './fly-later.ts';
import { useLoaded } from './later.ts';

/** Which station, how it sounds, whether it has been identified, and which leg. */
export function FlyHeader({ deck }: { readonly deck: Deck }): JSX.Element {
  const { plan, legIndex } = deck.state.value;
  const leg = deck.leg.value;
  if (plan === null || leg === null) return <header class="fly-header" />;
  const { station } = leg;
  return (
    <header class="fly-header">
      <h1 class="ident">{station.ident}</h1>
      {station.frequencyMhz === undefined ? null : <span>{megahertz(station.frequencyMhz)}</span>}
      {hasGesture.value ? <LaterMarks ident={station.ident} /> : null}
      <IdentState deck={deck} />
      <span class="leg-line soft">
        Leg {legIndex + 1} of {plan.legs.length} · {legWords(leg)}
      </span>
    </header>
  );
}

/** How it sounds, once the page has been touched; where it cannot be fetched the ident alone has to do. */
function LaterMarks({ ident }: { readonly ident: string }): JSX.Element | null {
  const { Page: Marks } = useLoaded(loadMarks);
  return Marks === null ? null : <Marks ident={ident} />;
}

/** The gate: it is always in sight, and one tap away from the ident. */
function IdentState({ deck }: { readonly deck: Deck }): JSX.Element {
  const confirmedAtMs = deck.state.value.legs[deck.state.value.legIndex]?.identConfirmedAtMs;
  const isConfirmed = typeof confirmedAtMs === 'number';
  return (
    <button
      type="button"
      class={isConfirmed ? 'ident-state ok' : 'ident-state open'}
      onClick={() => {
        deck.sheet.value = 'ident';
      }}
    >
      {isConfirmed ? (
        <span>
          ✓ ident<span class="wide-only"> confirmed</span> {ago(confirmedAtMs, nowMs.value)}
        </span>
      ) : (
        '! ident not confirmed'
      )}
    </button>
  );
}

/** A leg in one line. */
function legWords(leg: Leg): string {
  if (leg.arc) return `${arcWords(leg.arc)} · ${feet(leg.altitudeFt)}`;
  const endDmeNm = leg.endDmeNm ?? 0;
  const end = endDmeNm > 0 ? ` to DME ${oneDecimal(endDmeNm)}` : '';
  return `${leg.direction} ${leg.station.ident} on ${threeFigures(leg.courseDeg)}${end} · ${feet(leg.altitudeFt)}`;
}

/** An arc in one line. */
function arcWords({ dmeNm, toRadialDeg, turn }: DmeArc): string {
  const miles = Number.isInteger(dmeNm) ? String(dmeNm) : oneDecimal(dmeNm);
  return `arc ${miles} DME to the ${threeFigures(toRadialDeg)} radial, ${turn}`;
}

import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { LatLon } from '../../src/earth/geodesic.ts';
import { megahertz } from '../parts/figures.ts';
import { whoSends, type Sender } from './senders.ts';
import type { VerdictWords } from './verdict-words.ts';

interface VerdictProps {
  readonly words: VerdictWords;
  /** Where the station that is expected stands, to name the nearest first. */
  readonly near: LatLon | null;
}

const SIGNS = { confirmed: '✓', different: '!', 'do-not-use': '!', 'cannot-tell': '…' } as const;

/** What was heard and what to do about it. */
export function Verdict({ words, near }: VerdictProps): JSX.Element {
  const { kind, headline, advice, askWhose } = words;
  return (
    <div class={`verdict ${kind}`}>
      <p class="headline">
        <span aria-hidden="true">{SIGNS[kind]} </span>
        {headline}
      </p>
      <p>{advice}</p>
      {askWhose === null ? null : <Senders key={askWhose} ident={askWhose} near={near} />}
      <Announced words={words} />
    </div>
  );
}

/** Often enough for a listener who does not look; more often it would talk over the ident. */
const ANNOUNCE_EVERY_MS = 6000;

/** The headline for those who have the page read to them: a verdict at once, the rest now and then. */
function Announced({ words }: { readonly words: VerdictWords }): JSX.Element {
  const [text, setText] = useState('');
  const { kind, headline } = words;
  useEffect(() => {
    const wait = kind === 'cannot-tell' ? ANNOUNCE_EVERY_MS : 0;
    const timer = setTimeout(() => {
      setText(headline);
    }, wait);
    return () => {
      clearTimeout(timer);
    };
  }, [kind, headline]);
  return (
    <p class="hidden" role="status">
      {text}
    </p>
  );
}

function Senders({
  ident,
  near,
}: {
  readonly ident: string;
  readonly near: LatLon | null;
}): JSX.Element {
  const [senders, setSenders] = useState<readonly Sender[] | null>(null);
  useEffect(() => {
    let isGone = false;
    whoSends(ident, near).then(
      (found) => {
        if (!isGone) setSenders(found);
      },
      // Without the list the ident that was heard stands alone.
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [ident, near]);
  if (senders === null) return <></>;
  if (senders.length === 0) return <p class="soft">No station known here sends {ident}.</p>;
  return (
    <ul class="senders">
      {senders.map((sender) => (
        <li key={`${sender.name} ${sender.frequencyMhz ?? ''} ${sender.distanceNm ?? ''}`}>
          <b>{ident}</b> {lineOf(sender)}
        </li>
      ))}
    </ul>
  );
}

function lineOf({ name, frequencyMhz, distanceNm }: Sender): string {
  return [
    ...(frequencyMhz === null ? [] : [`on ${megahertz(frequencyMhz)}`]),
    ...(distanceNm === null ? [] : [`${distanceNm.toFixed(0)} NM away`]),
    ...(name === null ? [] : [name]),
  ].join(' · ');
}

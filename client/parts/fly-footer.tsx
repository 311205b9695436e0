import type { JSX } from 'preact';
import { speaker } from '../voice/speaker.ts';
import type { Deck } from './deck.ts';

const SYNC_WORDS = {
  'saved-here': 'saved on this device',
  'saved-on-server': 'saved here and on the server',
  'catching-up': 'saved here, sending to the server',
} as const;

/** Quiet buttons, where the flight is saved, and the cautions. */
export function FlyFooter({ deck }: { readonly deck: Deck }): JSX.Element {
  const open = (sheet: 'readings' | 'spoken' | 'more') => () => {
    deck.sheet.value = sheet;
  };
  const count = deck.state.value.readings.filter((each) => !each.isTakenBack).length;
  const isMuted = speaker.isMuted.value;
  return (
    <footer class="fly-footer">
      <nav class="fly-nav" aria-label="Flight">
        <button type="button" class="quiet" onClick={open('readings')}>
          Readings {count}
        </button>
        <button type="button" class="quiet" onClick={open('spoken')}>
          Spoken
        </button>
        <button
          type="button"
          class="quiet"
          aria-pressed={!isMuted}
          onClick={() => {
            if (isMuted) speaker.unmute();
            else speaker.mute();
          }}
        >
          {isMuted ? 'Voice is off' : 'Voice is on'}
        </button>
        <button type="button" class="quiet" onClick={open('more')}>
          Flight…
        </button>
      </nav>
      <p class="small">
        <span>
          Practice and prompting aid. Fly the aircraft first; your instruments, charts and ATC
          decide.
        </span>
        <span class="state">
          <VoiceText />
          {deck.store.syncProblem.value ?? SYNC_WORDS[deck.store.syncState.value]}
        </span>
      </p>
    </footer>
  );
}

function VoiceText(): JSX.Element | null {
  const progress = speaker.loadProgress.value;
  if (progress !== null) return <>fetching the voice, {Math.round(progress * 100)} % · </>;
  const problem = speaker.voiceProblem.value;
  return problem === null ? null : <>{problem} · </>;
}

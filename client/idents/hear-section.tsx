import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import './hear.css';
import { isIdent } from '../../src/ident/morse.ts';
import { timelineLengthS } from '../../src/ident/timeline.ts';
import { writeWav } from '../../src/ident/wav.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import { CheckBox } from '../form/check-box.tsx';
import { Field } from '../form/field.tsx';
import { MorseMarks } from '../parts/morse-marks.tsx';
import { settings } from '../settings/settings.ts';
import { playSamples, type PlayingSound } from '../sound/ident-player.ts';
import { channelVoice } from '../voice/channel-voice.ts';
import { speaker } from '../voice/speaker.ts';
import { HearChoices, type ChangeDraft } from './hear-choices.tsx';
import {
  CLEAN,
  HEAR_RATE_HZ,
  hearMarks,
  hearSound,
  markAt,
  type HearDraft,
  type HearSound,
} from './hear-sound.ts';
import { saveFile } from '../parts/save-file.ts';

const NO_PROBLEMS: ReadonlyMap<string, string> = new Map();

/** An ident as it is keyed on the air, to be compared with the receiver. */
export function HearSection(): JSX.Element {
  const [draft, setDraft] = useState<HearDraft>(() => ({
    ...CLEAN,
    wpm: settings.peek().identWpm,
  }));
  const [isSpelled, setSpelled] = useState(true);
  const ident = draft.ident.trim().toUpperCase();
  const isRight = isIdent(ident);
  const { sounding, problem, isBusy, play, stop, save } = useHeard({ ...draft, ident }, isSpelled);
  const change: ChangeDraft = (part) => {
    setDraft((before) => ({ ...before, ...part }));
  };
  return (
    <section class="stack hear" aria-labelledby="hear-title">
      <h2 id="hear-title">Hear one</h2>
      <div class="fields">
        <Field
          name="ident"
          label="Ident"
          value={draft.ident}
          onChange={(text) => {
            change({ ident: text });
          }}
          problems={isRight ? NO_PROBLEMS : new Map([['ident', '1 to 4 letters, as on the chart']])}
          hint="From the chart. TEST is what a station sends while it is worked on."
        />
      </div>
      <div class="ident-shown">
        {isRight ? <MorseMarks ident={ident} sounding={sounding?.index ?? null} /> : null}
        <p class="phonetic">{isRight ? phonetic(ident) : ''}</p>
        <p class="soft" aria-hidden="true">
          {sounding === null ? '\u00a0' : SENDER[sounding.of]}
        </p>
      </div>
      <p class="problem" role="alert">
        {problem}
      </p>
      <div class="row wrap">
        <button
          type="button"
          class="main hurry"
          disabled={!isRight && !isBusy}
          onClick={isBusy ? stop : play}
        >
          {isBusy ? 'Stop' : 'Play it'}
        </button>
        <button type="button" class="hurry" disabled={!isRight} onClick={save}>
          Save as WAV
        </button>
      </div>
      <CheckBox
        label="The voice says the letters afterwards."
        value={isSpelled}
        onChange={setSpelled}
      />
      <HearChoices draft={draft} change={change} />
    </section>
  );
}

const SENDER = { vor: 'the VOR, on the lower tone', dme: 'the DME, on the higher tone' } as const;

type Sounding = ReturnType<typeof markAt>;

/** The sound that was asked for: made, played, followed and saved. */
function useHeard(
  draft: HearDraft,
  isSpelled: boolean,
): {
  readonly sounding: Sounding;
  readonly isBusy: boolean;
  readonly problem: string;
  readonly play: () => void;
  readonly stop: () => void;
  readonly save: () => void;
} {
  const [sounding, setSounding] = useState<Sounding>(null);
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const current = useRef<PlayingSound | null>(null);
  const turn = useRef(0);
  const stop = (): void => {
    turn.current += 1;
    current.current?.stop();
    current.current = null;
    setBusy(false);
    setSounding(null);
  };
  // Not `stop`: the part of the page is gone by then.
  useEffect(() => {
    return () => {
      turn.current += 1;
      current.current?.stop();
    };
  }, []);
  const fail = (reason: unknown): void => {
    setProblem(reason instanceof Error ? reason.message : String(reason));
  };
  const play = async (): Promise<void> => {
    stop();
    speaker.hush();
    const mine = turn.current;
    const isMine = (): boolean => turn.current === mine;
    setProblem('');
    setBusy(true);
    try {
      const sound = await makeSound(draft);
      if (!isMine()) return;
      const playing = playSamples(sound, settings.peek().volume, (nowS) => {
        if (isMine()) setSounding((before) => sameOr(before, markAt(sound.marks, nowS)));
      });
      current.current = playing;
      await playing.done;
      if (isMine() && isSpelled) speaker.say(phonetic(draft.ident), { channel: 'answer' });
    } catch (reason) {
      if (isMine()) fail(reason);
    }
    if (isMine()) stop();
  };
  const save = async (): Promise<void> => {
    setProblem('');
    const { samples, sampleRateHz } = await makeSound(draft);
    saveFile(
      new Blob([writeWav(samples, sampleRateHz)], { type: 'audio/wav' }),
      `${draft.ident}.wav`,
    );
  };
  return {
    sounding,
    isBusy,
    problem,
    stop,
    play: () => void play(),
    save: () => {
      save().catch(fail);
    },
  };
}

/** The same place is the same value: fifty times a second nothing needs to be drawn anew. */
function sameOr(before: Sounding, now: Sounding): Sounding {
  return before?.index === now?.index && before?.of === now?.of ? before : now;
}

/** Lead and tail of the sound, and some more: the voice never ends before it. */
const VOICE_SPARE_S = 3;

const SEEDS = 1_000_000;

/** Noise and hand are new each time. */
async function makeSound(draft: HearDraft): Promise<HearSound> {
  const seed = Math.floor(Math.random() * SEEDS);
  const marks = hearMarks(draft, seed);
  const voice = draft.hasVoice
    ? await channelVoice(timelineLengthS(marks) + VOICE_SPARE_S, HEAR_RATE_HZ)
    : null;
  return hearSound(marks, draft, voice, seed);
}

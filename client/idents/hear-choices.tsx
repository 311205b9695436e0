import type { JSX } from 'preact';
import { Choice } from '../parts/field.tsx';
import { Slider } from '../parts/slider.tsx';
import { changeSettings, settings } from '../settings/settings.ts';
import type { HearDraft } from './hear-sound.ts';

/** Changes some of what is asked for. */
export type ChangeDraft = (part: Partial<HearDraft>) => void;

interface ChoicesProps {
  readonly draft: HearDraft;
  readonly change: ChangeDraft;
}

const decibels = (value: number): string => {
  if (value === 0) return 'as loud';
  return value > 0 ? `${value} dB stronger` : `${-value} dB weaker`;
};

/** Who keys it, how fast, how loud, and what lies over it. */
export function HearChoices({ draft, change }: ChoicesProps): JSX.Element {
  return (
    <>
      <Choice
        name="keyed"
        label="Who keys it"
        value={draft.keyed}
        words={[
          { word: 'vor-and-dme', name: 'VOR with its DME' },
          { word: 'vor', name: 'VOR alone' },
          { word: 'dme', name: 'DME alone' },
        ]}
        onChoose={(keyed) => {
          change({ keyed });
        }}
      />
      <p class="soft">{ABOUT[draft.keyed]}</p>
      <Choice
        name="long"
        label="How long"
        value={draft.long}
        words={[
          { word: 'round', name: 'As it comes round' },
          { word: 'once', name: 'Once' },
        ]}
        onChoose={(long) => {
          change({ long });
        }}
      />
      <div class="fields">
        <Slider
          id="hear-wpm"
          label="Speed"
          value={draft.wpm}
          low={5}
          high={15}
          step={1}
          show={(wpm) => `${wpm} words a minute`}
          onChange={(wpm) => {
            change({ wpm });
          }}
        />
        <Slider
          id="hear-volume"
          label="Volume"
          value={settings.value.volume}
          low={0}
          high={1}
          step={0.1}
          show={(value) => `${Math.round(value * 100)} %`}
          onChange={(volume) => {
            changeSettings({ volume });
          }}
        />
      </div>
      <details class="about">
        <summary>Make it harder</summary>
        <Harder draft={draft} change={change} />
      </details>
    </>
  );
}

const ABOUT: Readonly<Record<HearDraft['keyed'], string>> = {
  'vor-and-dme': 'Three times by the VOR, then once by the DME on a higher tone.',
  vor: 'The VOR alone, in each quarter of 40 seconds.',
  dme: 'Only the DME, once in 40 seconds: the VOR’s own ident is missing, so do not use the VOR.',
};

function Harder({ draft, change }: ChoicesProps): JSX.Element {
  return (
    <div class="stack">
      <Choice
        name="noise"
        label="Noise"
        value={draft.noise}
        words={[
          { word: 'none', name: 'None' },
          { word: 'cabin', name: 'Cabin' },
          { word: 'receiver', name: 'Weak signal' },
        ]}
        onChoose={(noise) => {
          change({ noise });
        }}
      />
      {draft.noise === 'none' ? null : (
        <Slider
          id="hear-noise"
          label="The ident against the noise"
          value={draft.toneOverNoiseDb}
          low={-12}
          high={20}
          step={1}
          show={decibels}
          onChange={(toneOverNoiseDb) => {
            change({ toneOverNoiseDb });
          }}
        />
      )}
      <Check
        label="A voice on the channel"
        isOn={draft.hasVoice}
        onChange={(hasVoice) => {
          change({ hasVoice });
        }}
      />
      {draft.hasVoice ? (
        <Slider
          id="hear-voice"
          label="The ident against the voice"
          value={draft.toneOverVoiceDb}
          low={-6}
          high={6}
          step={1}
          show={decibels}
          onChange={(toneOverVoiceDb) => {
            change({ toneOverVoiceDb });
          }}
        />
      ) : null}
      <Check
        label="It swells and fades"
        isOn={draft.isFading}
        onChange={(isFading) => {
          change({ isFading });
        }}
      />
      <Check
        label="Keyed unevenly, as by hand"
        isOn={draft.isUneven}
        onChange={(isUneven) => {
          change({ isUneven });
        }}
      />
      <Slider
        id="hear-tone"
        label="Tone of the VOR"
        value={draft.vorToneHz}
        low={970}
        high={1070}
        step={5}
        show={(toneHz) => `${toneHz} Hz${toneHz === 1020 ? '' : ', off its 1020'}`}
        onChange={(vorToneHz) => {
          change({ vorToneHz });
        }}
      />
    </div>
  );
}

interface CheckProps {
  readonly label: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

function Check({ label, isOn, onChange }: CheckProps): JSX.Element {
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={isOn}
        onChange={(box) => {
          onChange(box.currentTarget.checked);
        }}
      />
      {label}
    </label>
  );
}

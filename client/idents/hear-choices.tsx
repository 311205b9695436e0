import type { JSX } from 'preact';
import { boundTo } from '../form/bound.ts';
import { CheckBox } from '../form/check-box.tsx';
import { Choice } from '../form/choice.tsx';
import { Slider } from '../form/slider.tsx';
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
  const of = boundTo(draft, change);
  return (
    <>
      <Choice
        name="keyed"
        label="Who keys it"
        {...of('keyed')}
        words={{ 'vor-and-dme': 'VOR with its DME', vor: 'VOR alone', dme: 'DME alone' }}
      />
      <p class="soft">{ABOUT[draft.keyed]}</p>
      <Choice
        name="long"
        label="How long"
        {...of('long')}
        words={{ round: 'As it comes round', once: 'Once' }}
      />
      <div class="fields">
        <Slider
          id="hear-wpm"
          label="Speed"
          {...of('wpm')}
          low={5}
          high={15}
          step={1}
          show={(wpm) => `${wpm} words a minute`}
        />
        <Slider
          id="hear-volume"
          label="Volume"
          {...boundTo(settings.value, changeSettings)('volume')}
          low={0}
          high={1}
          step={0.1}
          show={(value) => `${Math.round(value * 100)} %`}
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
  const of = boundTo(draft, change);
  return (
    <div class="stack">
      <Choice
        name="noise"
        label="Noise"
        {...of('noise')}
        words={{ none: 'None', cabin: 'Cabin', receiver: 'Weak signal' }}
      />
      {draft.noise === 'none' ? null : (
        <Slider
          id="hear-noise"
          label="The ident against the noise"
          {...of('toneOverNoiseDb')}
          low={-12}
          high={20}
          step={1}
          show={decibels}
        />
      )}
      <CheckBox {...of('hasVoice')} label="A voice on the channel" />
      {draft.hasVoice ? (
        <Slider
          id="hear-voice"
          label="The ident against the voice"
          {...of('toneOverVoiceDb')}
          low={-6}
          high={6}
          step={1}
          show={decibels}
        />
      ) : null}
      <CheckBox {...of('isFading')} label="It swells and fades" />
      <CheckBox {...of('isUneven')} label="Keyed unevenly, as by hand" />
      <Slider
        id="hear-tone"
        label="Tone of the VOR"
        {...of('vorToneHz')}
        low={970}
        high={1070}
        step={5}
        show={(toneHz) => `${toneHz} Hz${toneHz === 1020 ? '' : ', off its 1020'}`}
      />
    </div>
  );
}

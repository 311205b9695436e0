import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import '../form.css';
import { boundTo } from '../form/bound.ts';
import { CheckBox } from '../form/check-box.tsx';
import { Choice } from '../form/choice.tsx';
import { Select } from '../form/select.tsx';
import { Slider } from '../form/slider.tsx';
import { AircraftList } from '../parts/aircraft-list.tsx';
import { CautionList } from '../parts/cautions.tsx';
import { addressOf } from '../parts/route.ts';
import { BUNDLED_VOICE, changeSettings, settings, settingsProblem } from '../settings/settings.ts';
import { playIdent } from '../sound/ident-player.ts';
import { speaker } from '../voice/speaker.ts';

const TRIAL = {
  decimal: 'Turn left one five degrees, heading zero niner seven. One one decimal one miles to go.',
  point: 'Turn left one five degrees, heading zero niner seven. One one point one miles to go.',
} as const;

/** What is kept on this device: aircraft, voice, idents, palette. */
export function SettingsPage(): JSX.Element {
  const of = boundTo(settings.value, changeSettings);
  return (
    <main class="plain">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Settings</h1>
      <p class="soft">They are kept on this device and take effect at once.</p>
      <p class="problem" role="alert">
        {settingsProblem.value}
      </p>
      <section aria-labelledby="aircraft-title">
        <h2 id="aircraft-title">Aircraft</h2>
        <p class="soft">A flight keeps the one it was started with.</p>
        <AircraftList />
      </section>
      <section aria-labelledby="voice-title">
        <h2 id="voice-title">Voice</h2>
        <VoiceSettings />
        <Choice
          name="decimal-word"
          label="11.1 is spoken as"
          {...of('decimalWord')}
          words={{ decimal: 'one one decimal one', point: 'one one point one' }}
        />
      </section>
      <section aria-labelledby="ident-title">
        <h2 id="ident-title">Idents</h2>
        <Slider
          id="ident-wpm"
          label="Keying speed"
          {...of('identWpm')}
          low={5}
          high={15}
          step={1}
          show={(wpm) => `${wpm} words a minute`}
        />
        <Slider
          id="ident-again"
          label="Ask to identify again"
          {...of('identAgainMin')}
          low={0}
          high={60}
          step={5}
          show={(minutes) => (minutes === 0 ? 'only in doubt' : `every ${minutes} minutes`)}
        />
        <p>
          <button
            type="button"
            onClick={() => {
              const { volume, identWpm: wpm } = settings.peek();
              playIdent('QEV', { wpm, toneHz: 1020, repeats: 1, volume }).done.catch(
                () => undefined,
              );
            }}
          >
            Hear it
          </button>
        </p>
      </section>
      <section aria-labelledby="light-title">
        <h2 id="light-title">Light</h2>
        <Choice
          name="palette"
          label="Palette"
          {...of('palette')}
          words={{ day: 'Day', night: 'Night', auto: 'As the device' }}
        />
      </section>
      <details class="about">
        <summary>Cautions</summary>
        <CautionList />
      </details>
    </main>
  );
}

function VoiceSettings(): JSX.Element {
  const { voiceOn, voiceName, decimalWord } = settings.value;
  const of = boundTo(settings.value, changeSettings);
  useEffect(() => void speaker.prepare(), []);
  const progress = speaker.loadProgress.value;
  return (
    <div class="stack">
      <CheckBox
        label="The voice speaks. What it says is always on the page as text too."
        value={voiceOn}
        onChange={(isOn) => {
          if (isOn) speaker.unmute();
          else speaker.mute();
        }}
      />
      <Select
        id="voice-name"
        label="Which voice"
        value={voiceName ?? ''}
        options={[
          { value: '', name: 'Choose for me' },
          { value: BUNDLED_VOICE, name: 'The voice that comes with it, works offline' },
          ...speaker.voiceNames.value.map((name) => ({ value: name, name })),
        ]}
        onChange={(name) => {
          changeSettings({ voiceName: name === '' ? null : name });
        }}
        hint={
          progress === null
            ? speaker.voiceProblem.value
            : `Fetching it, ${Math.round(progress * 100)} %`
        }
      />
      <Slider
        id="voice-rate"
        label="Pace"
        {...of('rate')}
        low={0.5}
        high={1.5}
        step={0.1}
        show={(value) => `${value.toFixed(1)} of its own`}
      />
      <Slider
        id="voice-volume"
        label="Volume of voice and idents"
        {...of('volume')}
        low={0}
        high={1}
        step={0.1}
        show={(value) => `${Math.round(value * 100)} %`}
      />
      <p>
        <button
          type="button"
          disabled={!voiceOn}
          onClick={() => {
            speaker.say(TRIAL[decimalWord], { channel: 'answer' });
          }}
        >
          Try the voice
        </button>
      </p>
    </div>
  );
}

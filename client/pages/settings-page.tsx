import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import '../form.css';
import { AircraftList } from '../parts/aircraft-list.tsx';
import { CautionList } from '../parts/cautions.tsx';
import { Choice } from '../parts/field.tsx';
import { addressOf } from '../parts/route.ts';
import { Slider } from '../parts/slider.tsx';
import { BUNDLED_VOICE, changeSettings, settings, settingsProblem } from '../settings/settings.ts';
import { playIdent } from '../sound/ident-player.ts';
import { speaker } from '../voice/speaker.ts';

const TRIAL = {
  decimal: 'Turn left one five degrees, heading zero niner seven. One one decimal one miles to go.',
  point: 'Turn left one five degrees, heading zero niner seven. One one point one miles to go.',
} as const;

/** What is kept on this device: aircraft, voice, idents, palette. */
export function SettingsPage(): JSX.Element {
  const { decimalWord, palette, identWpm, identAgainMin } = settings.value;
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
          value={decimalWord}
          words={[
            { word: 'decimal', name: 'one one decimal one' },
            { word: 'point', name: 'one one point one' },
          ]}
          onChoose={(word) => {
            changeSettings({ decimalWord: word });
          }}
        />
      </section>
      <section aria-labelledby="ident-title">
        <h2 id="ident-title">Idents</h2>
        <Slider
          id="ident-wpm"
          label="Keying speed"
          value={identWpm}
          low={5}
          high={15}
          step={1}
          show={(wpm) => `${wpm} words a minute`}
          onChange={(wpm) => {
            changeSettings({ identWpm: wpm });
          }}
        />
        <Slider
          id="ident-again"
          label="Ask to identify again"
          value={identAgainMin}
          low={0}
          high={60}
          step={5}
          show={(minutes) => (minutes === 0 ? 'only in doubt' : `every ${minutes} minutes`)}
          onChange={(minutes) => {
            changeSettings({ identAgainMin: minutes });
          }}
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
          value={palette}
          words={[
            { word: 'day', name: 'Day' },
            { word: 'night', name: 'Night' },
            { word: 'auto', name: 'As the device' },
          ]}
          onChoose={(word) => {
            changeSettings({ palette: word });
          }}
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
  const { voiceOn, voiceName, rate, volume, decimalWord } = settings.value;
  useEffect(() => void speaker.prepare(), []);
  const progress = speaker.loadProgress.value;
  return (
    <div class="stack">
      <label class="check">
        <input
          type="checkbox"
          checked={voiceOn}
          onChange={(change) => {
            if (change.currentTarget.checked) speaker.unmute();
            else speaker.mute();
          }}
        />
        The voice speaks. What it says is always on the page as text too.
      </label>
      <div class="field">
        <label for="voice-name">Which voice</label>
        <select
          id="voice-name"
          value={voiceName ?? ''}
          onChange={(change) => {
            const name = change.currentTarget.value;
            changeSettings({ voiceName: name === '' ? null : name });
          }}
        >
          <option value="">Choose for me</option>
          <option value={BUNDLED_VOICE}>The voice that comes with it, works offline</option>
          {speaker.voiceNames.value.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
        <p class="hint">
          {progress === null
            ? speaker.voiceProblem.value
            : `Fetching it, ${Math.round(progress * 100)} %`}
        </p>
      </div>
      <Slider
        id="voice-rate"
        label="Pace"
        value={rate}
        low={0.5}
        high={1.5}
        step={0.1}
        show={(value) => `${value.toFixed(1)} of its own`}
        onChange={(value) => {
          changeSettings({ rate: value });
        }}
      />
      <Slider
        id="voice-volume"
        label="Volume of voice and idents"
        value={volume}
        low={0}
        high={1}
        step={0.1}
        show={(value) => `${Math.round(value * 100)} %`}
        onChange={(value) => {
          changeSettings({ volume: value });
        }}
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

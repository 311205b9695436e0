import { audioOutput } from '../sound/audio-output.ts';
import frontEndUrl from './front-end.worklet.ts?worker&url';
import type { ToFrontEnd } from './ear-messages.ts';
import { closeMicrophone, openMicrophone } from './microphone.ts';
import { FRONT_END } from './worklet-scope.ts';

/** Sound on its way from the microphone through the front end. */
export interface MicPath {
  /** As the device calls the microphone. */
  readonly name: string;
  /** Samples a second of the audio context; the front end gives about 1000 complex ones. */
  readonly sampleRateHz: number;
  close(): void;
}

/** Why the sound stopped coming. */
export type Lost = 'unplugged' | 'asleep';

const loaded = new WeakSet<AudioContext>();

async function loadFrontEnd(context: AudioContext): Promise<void> {
  if (loaded.has(context)) return;
  try {
    await context.audioWorklet.addModule(frontEndUrl);
  } catch (reason) {
    throw new Error(
      'The listener could not be loaded: is the server gone? Load the page again when it is there.',
      { cause: reason },
    );
  }
  loaded.add(context);
}

/** Lets the sound of the microphone flow as blocks into a port; `lose` is told when it stops coming. */
export async function openMicPath(
  blocks: MessagePort,
  lose: (why: Lost) => void,
): Promise<MicPath> {
  const context = await audioOutput();
  const microphone = await openMicrophone();
  try {
    await loadFrontEnd(context);
  } catch (reason) {
    closeMicrophone(microphone);
    throw reason;
  }
  const source = new MediaStreamAudioSourceNode(context, { mediaStream: microphone.stream });
  const frontEnd = new AudioWorkletNode(context, FRONT_END, {
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  // Silent, but a part that leads nowhere is not run by every browser.
  const mute = new GainNode(context, { gain: 0 });
  source.connect(frontEnd).connect(mute).connect(context.destination);
  const begin: ToFrontEnd = { blocks };
  frontEnd.port.postMessage(begin, [blocks]);
  const tracks = microphone.stream.getAudioTracks();
  const onEnd = (): void => {
    lose('unplugged');
  };
  const onState = (): void => {
    if (context.state !== 'running') lose('asleep');
  };
  for (const track of tracks) track.addEventListener('ended', onEnd);
  context.addEventListener('statechange', onState);
  return {
    name: microphone.name,
    sampleRateHz: context.sampleRate,
    close: () => {
      for (const track of tracks) track.removeEventListener('ended', onEnd);
      context.removeEventListener('statechange', onState);
      const end: ToFrontEnd = { blocks: null };
      frontEnd.port.postMessage(end);
      source.disconnect();
      frontEnd.disconnect();
      mute.disconnect();
      closeMicrophone(microphone);
    },
  };
}

/** A microphone that is open. */
export interface Microphone {
  readonly stream: MediaStream;
  /** As the device calls it. */
  readonly name: string;
}

// A browser's noise suppressor takes a steady tone out, its gain control pumps, and what it thinks is an
// echo may be the ident.
const PLAIN_SOUND: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
};

const NEEDS_SECURE_PAGE =
  'This browser lets no page use the microphone here. Open the page at 127.0.0.1 on this device, or over https.';

/** Opens the microphone as it is; rejects with a sentence that says what to do. */
export async function openMicrophone(): Promise<Microphone> {
  // Missing where the page did not come over a secure connection.
  const devices = (navigator as { readonly mediaDevices?: MediaDevices }).mediaDevices;
  if (devices === undefined) throw new Error(NEEDS_SECURE_PAGE);
  const stream = await devices.getUserMedia({ audio: PLAIN_SOUND }).catch((reason: unknown) => {
    throw new Error(whyNot(reason), { cause: reason });
  });
  const name = stream.getAudioTracks()[0]?.label ?? '';
  return { stream, name: name === '' ? 'the microphone' : name };
}

/** Lets the microphone go. */
export function closeMicrophone({ stream }: Microphone): void {
  for (const track of stream.getTracks()) track.stop();
}

/** Names of the browser's refusals: Media Capture and Streams (W3C), getUserMedia. */
function whyNot(reason: unknown): string {
  switch (reason instanceof DOMException ? reason.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'The microphone is not allowed here. Allow it for this page (beside the address, or in the settings of the device), then press Listen again. A recording works without it.';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'There is no microphone. Plug one in, or the cable from the headset socket, then press Listen again. A recording works without it.';
    case 'NotReadableError':
    case 'AbortError':
      return 'The microphone does not start: another program may be using it. Close that one, then press Listen again.';
    default:
      return 'The microphone could not be opened. Press Listen again, or choose a recording.';
  }
}

/** How files of other kinds begin; `at`: where the mark stands. */
const MARKS: readonly { readonly at: number; readonly mark: string; readonly name: string }[] = [
  { at: 0, mark: 'RIFX', name: 'a WAV file with its bytes in the other order (RIFX)' },
  { at: 0, mark: 'RIFF', name: 'a RIFF file without sound (a video or a picture)' },
  { at: 0, mark: 'ID3', name: 'an MP3 file' },
  { at: 0, mark: 'OggS', name: 'an Ogg file' },
  { at: 0, mark: 'fLaC', name: 'a FLAC file' },
  { at: 4, mark: 'ftyp', name: 'an MPEG-4 file (M4A, MP4, MOV)' },
  { at: 0, mark: 'FORM', name: 'an AIFF file' },
  { at: 0, mark: '.snd', name: 'an AU file' },
  { at: 0, mark: 'caff', name: 'a CAF file' },
  { at: 0, mark: 'riff', name: 'a Wave64 file' },
  { at: 0, mark: '#!AMR', name: 'an AMR file' },
  { at: 0, mark: '\u001a\u0045\u00df\u00a3', name: 'a WebM or Matroska file' },
  { at: 0, mark: '\u0030\u0026\u00b2\u0075', name: 'a Windows Media file' },
  { at: 0, mark: 'PK\u0003\u0004', name: 'a zip file' },
  { at: 0, mark: '%PDF', name: 'a PDF file' },
];

/** Whether a file begins as a WAV does: RIFF, or RF64 for the very long ones, and WAVE. */
export function beginsAsWav(bytes: Uint8Array): boolean {
  return (has(bytes, 0, 'RIFF') || has(bytes, 0, 'RF64')) && has(bytes, 8, 'WAVE');
}

/** What a file that is no WAV seems to be, by how it begins: "an MP3 file", "nothing", "something else". */
export function whatFile(bytes: Uint8Array): string {
  if (bytes.length === 0) return 'nothing';
  const known = MARKS.find(({ at, mark }) => has(bytes, at, mark));
  if (known !== undefined) return known.name;
  const [first = 0, second = 0] = bytes;
  if (first === 0xff && (second & 0xf6) === 0xf0) return 'an AAC file';
  // An MP3 without a title begins with the 11 set bits of a frame (ISO/IEC 11172-3, 2.4.1.3).
  if (first === 0xff && second >= 0xe0) return 'an MP3 file';
  return 'something else';
}

function has(bytes: Uint8Array, at: number, mark: string): boolean {
  return Array.from(mark).every((letter, index) => bytes[at + index] === letter.charCodeAt(0));
}

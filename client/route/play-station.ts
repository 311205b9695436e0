import { settings } from '../settings/settings.ts';

/** Plays an ident once, as set; what plays sound is fetched only now. */
export function playStation(ident: string): void {
  const { identWpm, volume } = settings.peek();
  void import('../sound/ident-player.ts').then(({ playIdent }) =>
    playIdent(ident, { wpm: identWpm, toneHz: 1020, repeats: 1, volume }).done.catch(
      () => undefined,
    ),
  );
}

const NAME = 'spoken-radial.ear';

/**
 * Only one window listens at a time, the newest: some devices give the microphone's sound to one of them
 * and silence to the other. `taken` is called when another window takes it over; the returned function lets
 * it go.
 */
export function holdEar(taken: () => void): () => void {
  // Missing where the page did not come over a secure connection.
  const locks = (navigator as { readonly locks?: LockManager }).locks;
  let release = (): void => undefined;
  const held = new Promise<void>((settle) => {
    release = settle;
  });
  locks?.request(NAME, { steal: true }, () => held).catch(taken);
  return release;
}

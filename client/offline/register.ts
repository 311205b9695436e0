/**
 * Keeps the page on this device, so that it opens with the server gone. Only the built page: while
 * developing, a kept page would hide what was just changed.
 */
export function keepPageOnDevice(): void {
  // Missing where the page did not come over a secure connection.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const register = (): void => {
    navigator.serviceWorker.register('./service-worker.js').catch((reason: unknown) => {
      console.warn('The page could not be kept on this device.', reason);
    });
  };
  // After everything else: the pilot waits for the page, not for this.
  if (document.readyState === 'complete') register();
  else addEventListener('load', register, { once: true });
}

/** Whether the screen is kept from going dark: held, given up for now (the page is hidden), or not to be had here. */
export type Awake = 'held' | 'let go' | 'none';

/**
 * Keeps the screen awake while the page is seen (Screen Wake Lock API); a lock that the system takes is asked for again when
 * the page comes back. Returns how to stop.
 */
export function keepAwake(tell: (awake: Awake) => void): () => void {
  if (!('wakeLock' in navigator)) {
    tell('none');
    return () => undefined;
  }
  let lock: WakeLockSentinel | null = null;
  let isOver = false;
  async function ask(): Promise<void> {
    if (isOver || document.visibilityState !== 'visible' || (lock && !lock.released)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (isOver) return void lock.release();
      lock.addEventListener('release', () => tell('let go'));
      tell('held');
    } catch {
      // Low battery, or not allowed here.
      tell('none');
    }
  }
  const again = () => void ask();
  document.addEventListener('visibilitychange', again);
  void ask();
  return () => {
    isOver = true;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
}

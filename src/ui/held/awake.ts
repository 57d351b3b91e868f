/**
 * Keeps the screen from going dark, and asks again when the page comes back into sight. Where it is
 * refused or unknown nothing is said: the painter touches the screen.
 *
 * @returns lets go
 */
export function stayAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let isOver = false;
  const ask = async () => {
    if (isOver || document.visibilityState !== 'visible') return;
    try {
      const got = await navigator.wakeLock?.request('screen');
      if (isOver) void got?.release();
      else lock = got ?? null;
    } catch {
      // Refused: low battery, or a browser that does not do it.
    }
  };
  const onShown = () => void ask();
  document.addEventListener('visibilitychange', onShown);
  void ask();
  return () => {
    isOver = true;
    document.removeEventListener('visibilitychange', onShown);
    void lock?.release().catch(() => {});
  };
}

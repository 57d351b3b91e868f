/**
 * Holds a screen wake lock, and requests it again whenever the page becomes visible. A refusal or
 * missing support is silent.
 *
 * @returns releases the lock
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
      // Refused, for example on low battery.
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

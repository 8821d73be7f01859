/**
 * Remembers what is in focus, and gives the act that puts the focus back there once what had it since is gone. Where the focus has
 * gone elsewhere by then it is left alone.
 */
export function focusBack(): () => void {
  const before = document.activeElement;
  return () => {
    const isLost = document.activeElement === null || document.activeElement === document.body;
    if (isLost && before instanceof HTMLElement && before.isConnected) before.focus();
  };
}

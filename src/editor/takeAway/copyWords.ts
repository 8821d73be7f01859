/**
 * Puts words on the clipboard. With `plain`, `text` is a web page, which word processors take with its headings, and `plain`
 * is for what takes text only. False where the browser refuses.
 */
export async function copyWords(text: string, plain: string | null): Promise<boolean> {
  try {
    if (plain === null) await navigator.clipboard.writeText(text);
    else await navigator.clipboard.write([new ClipboardItem({ 'text/html': new Blob([text], { type: 'text/html' }), 'text/plain': new Blob([plain], { type: 'text/plain' }) })]);
    return true;
  } catch {
    return false;
  }
}

/** Files in the browser: saving, choosing and dropping. What is in a chosen file is for `readChosenFile` to say. */

/** Hands a file to the browser to be saved under a name. */
export function saveAsFile(name: string, content: string | Blob, type = 'application/json'): void {
  const url = URL.createObjectURL(typeof content === 'string' ? new Blob([content], { type }) : content);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has the content once the click is through; some browsers read it a little later.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Lets the maker choose files; none if the choice is called off. */
export function chooseFiles(accept = '.json,.txt,.md,application/json,text/plain', multiple = false): Promise<readonly File[]> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.multiple = multiple;
    input.addEventListener('change', () => resolve([...(input.files ?? [])]));
    input.addEventListener('cancel', () => resolve([]));
    input.click();
  });
}

/** What was dropped: files, or text dragged from elsewhere. */
export type Dropped = { readonly kind: 'files'; readonly files: readonly File[] } | { readonly kind: 'text'; readonly text: string };

/**
 * Takes files and text dropped on an element. `hover` says whether something hangs over it. Returns the function that
 * stops it, so it can be used as an attachment.
 */
export function takeDrops(element: HTMLElement, drop: (dropped: Dropped) => void, hover: (isOver: boolean) => void = () => undefined): () => void {
  const takes = (event: DragEvent) => event.dataTransfer?.types.some((type) => type === 'Files' || type === 'text/plain') ?? false;
  const onOver = (event: DragEvent) => {
    if (!takes(event)) return;
    event.preventDefault();
    hover(true);
  };
  const onLeave = (event: DragEvent) => {
    if (!(event.relatedTarget instanceof Node && element.contains(event.relatedTarget))) hover(false);
  };
  const onDrop = (event: DragEvent) => {
    hover(false);
    if (!event.dataTransfer || !takes(event)) return;
    event.preventDefault();
    const files = [...event.dataTransfer.files];
    if (files.length > 0) return drop({ kind: 'files', files });
    const text = event.dataTransfer.getData('text/plain');
    if (text.trim() !== '') drop({ kind: 'text', text });
  };
  element.addEventListener('dragover', onOver);
  element.addEventListener('dragleave', onLeave);
  element.addEventListener('drop', onDrop);
  return () => {
    element.removeEventListener('dragover', onOver);
    element.removeEventListener('dragleave', onLeave);
    element.removeEventListener('drop', onDrop);
  };
}

import { focusBack } from './focusBack.ts';

/** An attachment that opens a dialog over the page. The focus goes back to where it was, however the dialog goes away. */
export function openModal(dialog: HTMLDialogElement): () => void {
  const back = focusBack();
  dialog.showModal();
  return back;
}

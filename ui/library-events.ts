import type { Draft } from 'immer';
import type { Library } from '#model/library.ts';

/** An edit of the firm's library as people undo it. */
export interface LibraryEdit {
  readonly label: string;
  readonly change: (draft: Draft<Library>) => void;
}

/** Asks the firm's page for a change. */
export function sendLibraryEdit(from: EventTarget, edit: LibraryEdit): void {
  from.dispatchEvent(new CustomEvent('library-edit', { detail: edit, bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementEventMap {
    'library-edit': CustomEvent<LibraryEdit>;
  }
}

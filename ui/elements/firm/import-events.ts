import type { ColumnMap } from '#model/library.ts';

/** What a person does with a merchant's list before it is taken in. */
export type ImportAct =
  | { readonly kind: 'map'; readonly map: ColumnMap }
  | { readonly kind: 'sheet'; readonly name: string }
  | { readonly kind: 'date'; readonly date: string }
  | { readonly kind: 'match'; readonly key: string; readonly item: string }
  | { readonly kind: 'leave-out'; readonly rows: readonly number[]; readonly out: boolean }
  | { readonly kind: 'confirm'; readonly row: number; readonly isRight: boolean }
  | { readonly kind: 'take-in' }
  | { readonly kind: 'drop' };

/** Tells the import what a person has said. */
export function sendImportAct(from: EventTarget, act: ImportAct): void {
  from.dispatchEvent(new CustomEvent('import-act', { detail: act, bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementEventMap {
    'import-act': CustomEvent<ImportAct>;
  }
}

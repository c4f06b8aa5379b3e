import { html, type TemplateResult } from 'lit';
import type { JobDesk } from '../controllers/job-desk.ts';

/** Undo or redo, named after what it takes back. */
function undoButton(name: 'Undo' | 'Redo', label: string | null, then: () => void): TemplateResult {
  const path =
    name === 'Undo'
      ? 'M7 4 3 8l4 4M3.5 8H12a4.5 4.5 0 0 1 0 9H8'
      : 'M13 4l4 4-4 4M16.5 8H8a4.5 4.5 0 0 0 0 9h4';
  const words = label === null ? name : `${name}: ${label}`;
  return html`<button aria-label=${words} title=${words} ?disabled=${label === null} @click=${then}>
    <svg viewBox="0 0 20 20" aria-hidden="true"><path d=${path}></path></svg>
  </button>`;
}

/** Undo and redo of what lies on the desk. */
export const undoTools = (desk: JobDesk): TemplateResult => html`<div class="tools">
  ${undoButton('Undo', desk.session?.undoLabel ?? null, () => desk.undo())}
  ${undoButton('Redo', desk.session?.redoLabel ?? null, () => desk.redo())}
</div>`;

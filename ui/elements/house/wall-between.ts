import { html, nothing, type TemplateResult } from 'lit';
import type { Storey } from '#model/building.ts';
import { type Beside, openThickness, sideBeside } from '../../house/beside.ts';
import { lengthOf, minus, type Vector } from '../../house/vector.ts';
import { usualInner } from '../../house/wall-kinds.ts';
import { lengthField } from './own-fields.ts';

/** A new room beside a wall, as far as it is told. */
export interface RoomBeside {
  readonly storey: Storey;
  readonly beside: Beside;
  /** Along that wall, mm; null as long as nobody told it. */
  readonly alongMm: number | null;
}

/** How long the first side of an outline is, mm; null of none. */
export function firstSideMm(outline: readonly Vector[] | null): number | null {
  const [first, second] = outline ?? [];
  return first === undefined || second === undefined ? null : lengthOf(minus(second, first));
}

/** How thick the wall between is to be; where that is settled, what it stays and why. */
export function wallBetween(
  { storey, beside, alongMm }: RoomBeside,
  { value, took }: { readonly value: number; readonly took: (mm: number) => void },
): TemplateResult | typeof nothing {
  const wall = storey.walls.find(({ id }) => id === beside.wallId);
  const along = sideBeside(storey, beside, alongMm ?? 1);
  if (wall === undefined || along === null) return nothing;
  if (openThickness(storey, beside, along) === null)
    return html`<p class="hint">The wall between stays ${wall.thicknessMm} mm: it was looked at, or goes on past this room.</p>`;
  return lengthField({
    label: 'Wall between',
    help: 'Assumed until somebody looks.',
    value,
    took: (mm) => took(mm ?? usualInner.thicknessMm),
  });
}

import { html, type TemplateResult } from 'lit';
import type { AlongSide } from '../../house/along-side.ts';
import type { RoomSide } from '../../house/room-sides.ts';
import { choiceOf, lengthField } from './own-fields.ts';
import { sideName } from './side-name.ts';

/** A box along a side of a room, as fields tell it. */
export interface BoxSight {
  readonly sides: readonly RoomSide[];
  /** Along which side. */
  readonly at: number;
  /** Null where nobody said how far from the corner yet. */
  readonly leftMm: number | null;
  readonly box: Omit<AlongSide, 'leftMm'>;
  /** What is said of its size: that it is as usual. */
  readonly sizeHelp: string;
}

/** What a field of a box was set to. */
export type BoxChange = { readonly at: number } | Partial<AlongSide>;

/** Along which side something stands, how far from its left corner and from the wall, how large. */
export function boxFields(
  { sides, at, leftMm, box, sizeHelp }: BoxSight,
  took: (change: BoxChange) => void,
): TemplateResult {
  const length = (label: string, key: keyof AlongSide, help: string): TemplateResult => {
    const isSize = key === 'widthMm' || key === 'depthMm';
    const value = key === 'leftMm' ? leftMm : box[key];
    return lengthField({
      label,
      help,
      value,
      // Not below nought, so that a bare 1.2 is metres as everywhere in a room.
      min: isSize ? 1 : 0,
      needed: value !== null,
      took: (mm) => {
        if (mm !== null) took({ [key]: mm });
      },
    });
  };
  return html`<div class="pair">
    ${choiceOf({
      label: 'Against',
      options: sides.map((_, i) => ({ value: String(i), label: sideName(sides, i) })),
      value: String(at),
      took: (i) => took({ at: Number(i) }),
    })}
    ${length('From its left corner', 'leftMm', 'Seen from in the room, to the near edge')}
    ${length('Along the wall', 'widthMm', sizeHelp)} ${length('Into the room', 'depthMm', sizeHelp)}
    ${length('Off the wall', 'offMm', '')}
  </div>`;
}

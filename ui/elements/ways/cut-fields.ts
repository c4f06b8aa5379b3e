import { html, type TemplateResult } from 'lit';
import type { Cut } from '#model/scheme.ts';
import { hiddenJoint } from '../../edits/join-point.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { jointFields } from './tap-fields.ts';

const ways = [
  { value: 'joint', label: 'by a joint in the old cable' },
  { value: 'terminals', label: 'at the neighbour’s terminals' },
  { value: 'old-cable', label: 'by the old cable itself, brought in' },
] as const;

function cutBy(how: Cut['how'], alongMm: number): Cut {
  if (how === 'terminals') return { how };
  return how === 'joint' ? { how, alongMm, joint: hiddenJoint } : { how, alongMm };
}

/** How the opened leg is joined to the new cable on one side, and where it is cut. */
export function cutFields(
  cut: Cut,
  words: { readonly label: string; readonly from: string; readonly usualMm: number },
  changed: (cut: Cut) => void,
): TemplateResult {
  const alongMm = cut.how === 'terminals' ? words.usualMm : cut.alongMm;
  return html`<choice-field
      class="wide"
      .label=${words.label}
      .value=${cut.how}
      .options=${ways}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<Cut['how']>>) => {
        event.stopPropagation();
        changed(cutBy(event.detail.value, alongMm));
      }}
    ></choice-field>
    ${
      cut.how === 'joint'
        ? jointFields(
            { joint: cut.joint ?? hiddenJoint, alongMm, from: words.from },
            ({ joint, alongMm: at }) => changed({ ...cut, joint, alongMm: at }),
          )
        : cut.how === 'old-cable'
          ? html`<number-field
            .label=${`Cable from ${words.from} to the cut`}
            unit="mm"
            .value=${alongMm}
            .min=${0}
            .max=${1_000_000}
            @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
              event.stopPropagation();
              if (event.detail.value !== null) changed({ ...cut, alongMm: event.detail.value });
            }}
          ></number-field>`
          : ''
    }`;
}

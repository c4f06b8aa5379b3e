import { html, type TemplateResult } from 'lit';
import type { Supply } from '#model/installation.ts';
import { markableEntry } from '../../edits/marked.ts';
import { type OtherSource, setOtherSources, setSupplyCertainty } from '../../edits/supply.ts';
import '../fields/choice-field.ts';
import '../fields/tick-field.ts';
import { certaintyEdits, edits } from './fact-fields.ts';
import { otherSources } from './found-words.ts';

/** Not looked at, none, or which: a tick is an answer, and the last one taken away leaves the question open. */
export function sourcesField({ otherSources: sources, certainty }: Supply): TemplateResult {
  const put = (next: readonly OtherSource[] | null) => {
    const edit = setOtherSources(next);
    return markableEntry(edit, next, (sure) => setSupplyCertainty('otherSources', sure));
  };
  const isOpen = certainty?.otherSources === 'unknown';
  const some = sources.length === 0 ? [] : [{ value: 'some', label: 'Those ticked below' }];
  return html`<choice-field
      data-fact="otherSources"
      label="Solar panels, battery, vehicle charger"
      .empty=${'Not looked at'}
      .options=${[{ value: 'none', label: 'None' }, ...some]}
      .value=${isOpen ? null : sources.length === 0 ? 'none' : 'some'}
      .certainty=${isOpen ? null : (certainty?.otherSources ?? 'seen')}
      @field-change=${edits<'none' | 'some' | null>((word) =>
        word === 'some' ? put(sources) : put(word === 'none' ? [] : null),
      )}
      @certainty-change=${certaintyEdits((sure) => setSupplyCertainty('otherSources', sure))}
    ></choice-field>
    <div class="ticks">${otherSources.map(
      ({ value, label }) =>
        html`<tick-field
          .label=${label}
          .value=${!isOpen && sources.includes(value)}
          @field-change=${edits<boolean>((has) => {
            const others = isOpen ? [] : sources.filter((source) => source !== value);
            const next = has ? [...others, value] : others;
            return put(next.length === 0 ? null : next);
          })}
        ></tick-field>`,
    )}</div>`;
}

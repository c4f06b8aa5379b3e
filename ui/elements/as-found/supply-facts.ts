import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { bondCertainty, bondFact, type Service } from '#engine/rules/bonds.ts';
import type { Supply } from '#model/installation.ts';
import { markableEntry } from '../../edits/marked.ts';
import {
  type BondFound,
  type OtherSource,
  setBond,
  setBondCertainty,
  setOtherSources,
  setSupplyCertainty,
} from '../../edits/supply.ts';
import type { JobView } from '../../job-view.ts';
import '../photos/photo-strip.ts';
import { controlsCss } from '../shared-styles.ts';
import { certaintyEdits, choiceFact, edits, numberFact, type WordChoice } from './fact-fields.ts';
import { supplyFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { earthings, otherSources, services } from './found-words.ts';

/** Sizes of bonding conductors that are met, mm². Source: BS 6004 (from memory). */
const bondSizes = [4, 6, 10, 16, 25].map((mm2) => ({ value: String(mm2), label: `${mm2} mm²` }));

/** The supply: its earthing, what was read of it, its fuse, tails and bonds. */
export class SupplyFacts extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [controlsCss, formCss];
  declare view: JobView;

  override render(): TemplateResult {
    const { supply } = this.view.job;
    const facts = supplyFacts(supply);
    return html`<div class="fields" data-thing="supply">
      ${choiceFact(facts, 'earthing', { label: 'Earthing', options: earthings })}
      ${numberFact(facts, 'mainFuseA', { label: 'Main fuse', unit: 'A', min: 1, max: 10_000 })}
      ${numberFact(facts, 'zeOhm', { label: 'Ze, outside the house', unit: 'Ω', max: 1e7 })}
      ${numberFact(facts, 'pfcKA', { label: 'Prospective fault current', unit: 'kA', max: 1000 })}
      ${numberFact(facts, 'tailsMm2', { label: 'Meter tails', unit: 'mm²', min: 0.1, max: 1000 })}
      ${numberFact(facts, 'earthingMm2', { label: 'Earthing conductor', unit: 'mm²', min: 0.1, max: 1000 })}
      ${this.#bonds(supply)} ${this.#sources(supply)}
      <h4>Photos of the intake</h4>
      <photo-strip .of=${{ kind: 'supply' }} .name=${'the supply'} .photos=${supply.photos ?? []}></photo-strip>
    </div>`;
  }

  /** One field below the other, so that how sure each is has room beside it on a phone. */
  #bonds(supply: Supply): TemplateResult {
    return html`<h4>Main bonds</h4>
      ${services.map((service) => this.#bond(supply, service))}`;
  }

  #bond(supply: Supply, { value: service, label }: WordChoice<Service>): TemplateResult {
    const name = service === 'other' ? 'another service' : label.toLowerCase();
    const bond = supply.bonding.find((known) => known.service === service);
    const put = (found: BondFound | null) => {
      const edit = setBond(service, found);
      return markableEntry(edit, found, (certainty) => setBondCertainty(service, certainty));
    };
    const found = foundWord(supply, service);
    return html`<choice-field
        data-fact=${bondFact(service)}
        .label=${`Bond to ${name}`}
        .empty=${'Not looked at'}
        .options=${bondChoices}
        .value=${found}
        .certainty=${found === null ? null : bondCertainty(supply, service)}
        @field-change=${edits<(typeof bondChoices)[number]['value'] | null>((word) =>
          put(word === null || word === 'no-service' ? word : { ...sizeOf(bond), seen: word === 'seen' }),
        )}
        @certainty-change=${certaintyEdits((certainty) => setBondCertainty(service, certainty))}
      ></choice-field>
      ${
        bond?.seen === true
          ? html`<choice-field
              .label=${`Size of the bond to ${name}`}
              .options=${sizesWith(bond.mm2)}
              .value=${bond.mm2 === undefined ? null : String(bond.mm2)}
              @field-change=${edits<string | null>((size) =>
                put({ ...(size === null ? {} : { mm2: Number(size) }), seen: true }),
              )}
            ></choice-field>`
          : nothing
      }`;
  }

  /** Not looked at, none, or which: a tick is an answer, and the last one taken away leaves the question open. */
  #sources({ otherSources: sources, certainty }: Supply): TemplateResult {
    const put = (next: readonly OtherSource[] | null) => {
      const edit = setOtherSources(next);
      return markableEntry(edit, next, (sure) => setSupplyCertainty('otherSources', sure));
    };
    const isOpen = certainty?.otherSources === 'unknown';
    const some = sources.length === 0 ? [] : [{ value: 'some', label: 'Those ticked below' }];
    return html`<h4>Other sources</h4>
      <choice-field
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
}

/** What can be found of a bond. That nobody looked is another answer than that there is none. */
const bondChoices = [
  { value: 'seen', label: 'Bonded' },
  { value: 'missing', label: 'No bond found' },
  { value: 'no-service', label: 'No such service, or plastic' },
] as const;

function foundWord(
  { bonding, absentServices }: Supply,
  service: Service,
): (typeof bondChoices)[number]['value'] | null {
  const bond = bonding.find((known) => known.service === service);
  if (bond !== undefined) return bond.seen ? 'seen' : 'missing';
  return absentServices?.includes(service) === true ? 'no-service' : null;
}

const sizeOf = (bond: Supply['bonding'][number] | undefined): { mm2?: number } =>
  bond?.mm2 === undefined ? {} : { mm2: bond.mm2 };

/** The sizes to choose from, the one that is there among them. */
const sizesWith = (mm2: number | undefined) =>
  mm2 === undefined || bondSizes.some(({ value }) => value === String(mm2))
    ? bondSizes
    : [{ value: String(mm2), label: `${mm2} mm²` }, ...bondSizes];
customElements.define('supply-facts', SupplyFacts);
declare global {
  interface HTMLElementTagNameMap {
    'supply-facts': SupplyFacts;
  }
}

import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Supply } from '#model/installation.ts';
import { type Service, setBond, setSupplyCertainty, setSupplyFact } from '../../edits/supply.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';
import { choiceFact, edits, numberFact, type WordChoice } from './fact-fields.ts';
import { supplyFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { earthings, otherSources, services } from './found-words.ts';

/** Sizes of bonding conductors that are met, mm². Source: BS 6004 (from memory). */
const bondSizes = [4, 6, 10, 16, 25].map((mm2) => ({ value: String(mm2), label: `${mm2} mm²` }));

/** The supply: its earthing, what was read of it, its fuse, tails and bonds. */
export class SupplyFacts extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    formCss,
    css`
      th,
      td {
        padding: 4px 6px 4px 0;
        vertical-align: middle;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { supply } = this.view.job;
    const facts = supplyFacts(supply);
    return html`<div class="fields">
      ${choiceFact(facts, 'earthing', { label: 'Earthing', options: earthings })}
      ${numberFact(facts, 'mainFuseA', { label: 'Main fuse', unit: 'A', min: 1, max: 10_000 })}
      ${numberFact(facts, 'zeOhm', { label: 'Ze, outside the house', unit: 'Ω', max: 1e7 })}
      ${numberFact(facts, 'pfcKA', { label: 'Prospective fault current', unit: 'kA', max: 1000 })}
      ${numberFact(facts, 'tailsMm2', { label: 'Meter tails', unit: 'mm²', min: 0.1, max: 1000 })}
      ${numberFact(facts, 'earthingMm2', { label: 'Earthing conductor', unit: 'mm²', min: 0.1, max: 1000 })}
      ${this.#bonds(supply)} ${this.#sources(supply)}
    </div>`;
  }

  #bonds({ bonding, certainty }: Supply): TemplateResult {
    return html`<h4>Main bonds</h4>
      <table>
        <thead>
          <tr>
            <th>To</th>
            <th>Bond</th>
            <th>Size</th>
          </tr>
        </thead>
        <tbody>
          ${services.map((service) =>
            this.#bond(
              service,
              bonding.find((bond) => bond.service === service.value),
            ),
          )}
        </tbody>
      </table>
      ${
        bonding.length === 0
          ? ''
          : html`<choice-field
              label="How sure the bonds are"
              .empty=${null}
              .options=${['seen', 'measured', 'assumed', 'unknown'].map((value) => ({ value, label: value }))}
              .value=${certainty?.bonding ?? 'seen'}
              @field-change=${edits<'seen' | 'measured' | 'assumed' | 'unknown'>((value) => setSupplyCertainty('bonding', value))}
            ></choice-field>`
      }`;
  }

  #bond({ value, label }: WordChoice<Service>, bond: Supply['bonding'][number] | undefined): TemplateResult {
    const state = bond === undefined ? null : bond.seen ? 'seen' : 'missing';
    return html`<tr>
      <td>${label}</td>
      <td>
        <choice-field
          label-hidden
          .label=${`Bond to ${label.toLowerCase()}`}
          .empty=${'None, or not looked at'}
          .options=${[{ value: 'seen', label: 'Seen' }, { value: 'missing', label: 'Not found' }]}
          .value=${state}
          @field-change=${edits<string | null>((word) =>
            setBond(value, word === null ? null : { ...sizeOf(bond), seen: word === 'seen' }),
          )}
        ></choice-field>
      </td>
      <td>
        <choice-field
          label-hidden
          .label=${`Size of the bond to ${label.toLowerCase()}`}
          .disabled=${bond === undefined || !bond.seen}
          .options=${sizesWith(bond?.mm2)}
          .value=${bond?.mm2 === undefined ? null : String(bond.mm2)}
          @field-change=${edits<string | null>((size) =>
            setBond(value, { ...(size === null ? {} : { mm2: Number(size) }), seen: bond?.seen ?? true }),
          )}
        ></choice-field>
      </td>
    </tr>`;
  }

  #sources({ otherSources: sources }: Supply): TemplateResult {
    return html`<h4>Other sources</h4>
      <div class="ticks">${otherSources.map(
        ({ value, label }) =>
          html`<tick-field
            .label=${label}
            .value=${sources.includes(value)}
            @field-change=${edits<boolean>((has) =>
              setSupplyFact(
                'otherSources',
                has ? [...sources, value] : sources.filter((source) => source !== value),
              ),
            )}
          ></tick-field>`,
      )}</div>`;
  }
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

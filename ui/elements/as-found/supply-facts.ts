import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { JobView } from '../../job-view.ts';
import '../photos/photo-strip.ts';
import { controlsCss } from '../shared-styles.ts';
import { bondField } from './bond-field.ts';
import { choiceFact, numberFact } from './fact-fields.ts';
import { supplyFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { earthings, services } from './found-words.ts';
import { sourcesField } from './sources-field.ts';

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
      <h4>Main bonds</h4>
      ${services.map(({ value }) => bondField(supply, value))}
      <h4>Other sources</h4>
      ${sourcesField(supply)}
      <h4>Photos of the intake</h4>
      <photo-strip .assets=${this.view.job.assets} .of=${{ kind: 'supply' }} .name=${'the supply'} .photos=${supply.photos ?? []}></photo-strip>
    </div>`;
  }
}
customElements.define('supply-facts', SupplyFacts);
declare global {
  interface HTMLElementTagNameMap {
    'supply-facts': SupplyFacts;
  }
}

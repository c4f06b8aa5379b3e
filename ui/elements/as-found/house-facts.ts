import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Storey } from '#model/building.ts';
import { tellFloorShown } from '../../controllers/floor-shown.ts';
import { setJobName, setSiteAddress, setSiteFact } from '../../edits/site.ts';
import { setStoreyFact } from '../../edits/storeys.ts';
import { planDirections } from '../../house/joist-directions.ts';
import type { JobView } from '../../job-view.ts';
import '../fields/yes-no-field.ts';
import { controlsCss } from '../shared-styles.ts';
import {
  choiceFact,
  edits,
  mustChoice,
  mustNumber,
  mustText,
  numberFact,
  textFact,
  yesNoFact,
} from './fact-fields.ts';
import { ceilingFacts, floorFacts, siteFacts, storeyFacts } from './facts-of.ts';
import { floorFields } from './floor-fields.ts';
import { formCss } from './form-styles.ts';
import { ceilingLinings, nations, premisesChoices, tenures } from './found-words.ts';

/** The house: whose it is and where, what the law asks of its kind, and how its storeys are built. */
export class HouseFacts extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [controlsCss, formCss];
  declare view: JobView;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const { id } of this.view.job.storeys) tellFloorShown(id, false);
  }

  override render(): TemplateResult {
    return html`<div class="fields">${this.#names()} ${this.#site()}</div>
      ${this.view.job.storeys.map((storey) => this.#storey(storey))}`;
  }

  #names(): TemplateResult {
    const { site, title, reference } = this.view.job;
    return html`${mustText('Title of the job', title, (text) => setJobName('title', text))}
      <div class="pair">
        ${mustText('Reference', reference, (text) => setJobName('reference', text))}
        ${textFact({ thing: site, set: setSiteFact }, 'surveyedOn', { label: 'Surveyed on', kind: 'date' })}
      </div>
      <text-field
        label="Customer"
        .value=${site.customer}
        @field-change=${edits<string>((text) => setSiteFact('customer', text))}
      ></text-field>
      <text-field
        label="Address, a line each"
        .multiline=${true}
        .value=${site.address.join('\n')}
        @field-change=${edits<string>(setSiteAddress)}
      ></text-field>`;
  }

  #site(): TemplateResult {
    const { site } = this.view.job;
    const facts = siteFacts(site);
    const plain = { thing: site, set: setSiteFact };
    return html`<div class="pair">
        ${mustChoice(plain, 'nation', { label: 'Nation', options: nations })}
        ${mustChoice(plain, 'premises', { label: 'Premises', options: premisesChoices })}
      </div>
      ${choiceFact(facts, 'tenure', { label: 'Who lives there', options: tenures })}
      ${yesNoFact(facts, 'occupied', { label: 'Lived in during the work' })}
      ${yesNoFact(facts, 'builtBefore2000', { label: 'Built before 2000', help: 'Then asbestos is asked after.' })}
      ${textFact(plain, 'notes', { label: 'Notes', multiline: true })}`;
  }

  #storey(storey: Storey): TemplateResult {
    const facts = storeyFacts(storey);
    return html`<details
      class="less"
      data-thing=${storey.id}
      ?open=${this.view.chosen === storey.id}
      @toggle=${(event: Event) => tellFloorShown(storey.id, (event.currentTarget as HTMLDetailsElement).open)}
    >
      <summary>${storey.name}: heights, floor and ceiling</summary>
      <div class="fields">
        ${mustText('Name', storey.name, (text) => setStoreyFact(storey, 'name', text))}
        ${mustNumber(facts, 'heightMm', { label: 'Floor to ceiling', unit: 'mm', min: 1, max: 1_000_000 })}
        ${mustNumber(facts, 'floorLevelMm', { label: 'Its floor above the lowest one', unit: 'mm', min: -50_000, max: 200_000 })}
        ${this.#floor(storey)} ${this.#ceiling(storey)}
      </div>
    </details>`;
  }

  #floor(storey: Storey): TemplateResult {
    return html`<h4>Floor</h4>
      ${floorFields(floorFacts(storey), planDirections)}`;
  }

  #ceiling(storey: Storey): TemplateResult {
    const facts = ceilingFacts(storey);
    return html`<h4>Ceiling</h4>
      ${mustChoice(facts, 'lining', { label: 'Lined with', options: ceilingLinings })}
      <yes-no-field
        label="A loft above it"
        .unknown=${false}
        .value=${storey.ceiling.loft}
        @field-change=${edits<boolean>((loft) => facts.set('loft', loft))}
      ></yes-no-field>
      ${numberFact(facts, 'insulationMm', { label: 'Insulation above it', unit: 'mm', max: 1_000_000 })}`;
  }
}
customElements.define('house-facts', HouseFacts);
declare global {
  interface HTMLElementTagNameMap {
    'house-facts': HouseFacts;
  }
}

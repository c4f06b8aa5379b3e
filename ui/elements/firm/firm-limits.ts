import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Limits } from '#model/library.ts';
import { type NumberLimit, setLimit, setReckoning } from '../../edits/firm.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';
import type { OwnNumber } from './own-number.ts';

const ownLimits: readonly OwnNumber<NumberLimit>[] = [
  {
    key: 'areaServedM2',
    label: 'Floor area served by a circuit',
    unit: 'm²',
    help: 'Empty: guidance, 100 for a ring, 75 or 50 for a radial',
  },
  {
    key: 'fixedLoadW',
    label: 'Largest fixed load on a shared circuit',
    unit: 'W',
    help: 'Empty: guidance, 2000',
  },
  {
    key: 'maximumSpurs',
    label: 'Most unfused spurs of a circuit',
    unit: '',
    help: 'Empty: guidance, as many as points',
  },
  {
    key: 'minimumHeightMm',
    label: 'Least height of an outlet',
    unit: 'mm',
    help: 'Empty: by the nation, 450 or 400',
  },
  {
    key: 'maximumHeightMm',
    label: 'Greatest height of an outlet',
    unit: 'mm',
    help: 'Empty: by the nation, 1200',
  },
  { key: 'cornerClearanceMm', label: 'Clear of an inside corner', unit: 'mm', help: 'Empty: by the nation' },
  { key: 'sinkClearanceMm', label: 'Clear of a sink', unit: 'mm', help: 'Empty: guidance, 300' },
  { key: 'hobClearanceMm', label: 'Clear of a hob', unit: 'mm', help: 'Empty: guidance, 300' },
  { key: 'worktopClearanceMm', label: 'Above a worktop', unit: 'mm', help: 'Empty: guidance, 150' },
  { key: 'ambientC', label: 'Air that cables lie in', unit: '°C', help: 'Empty: 30, as the tables' },
  { key: 'voltDropPercent', label: 'Volt drop in socket circuits', unit: '%', help: 'Empty: BS 7671, 5' },
];

const dropWays = [
  { value: 'tabulated', label: 'No: as tabulated, at 70 °C' },
  { value: 'corrected', label: 'Yes: BS 7671 Appendix 4 §6.1' },
];

const coldRules = [
  { value: 'eighty-percent', label: '80 % of the limit' },
  { value: 'guide-divisor', label: 'the limit ÷ 1.24 (On-Site Guide)' },
];

/** The firm's own limits, and its ways of reckoning. */
export class FirmLimits extends LitElement {
  static override properties: PropertyDeclarations = { limits: { attribute: false } };
  static override styles = [controlsCss, firmGridCss];
  declare limits: Limits;

  override render(): TemplateResult {
    return html`<h2>Own limits</h2>
      <p class="hint">
        A limit set here takes the place of guidance in the checks. What the standard itself requires cannot be set.
      </p>
      <div class="grid">${ownLimits.map((limit) => this.#limit(limit))} ${this.#reckonings()}</div>`;
  }

  /** Ways of reckoning where the trade has two. */
  #reckonings(): TemplateResult {
    const { voltDropCorrected = false, coldLoopRule = 'eighty-percent' } = this.limits;
    return html`<choice-field
        label="Volt drop at the conductors’ own temperature"
        .value=${voltDropCorrected ? 'corrected' : 'tabulated'}
        .options=${dropWays}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<string>>) =>
          sendLibraryEdit(this, setReckoning({ voltDropCorrected: event.detail.value === 'corrected' }))}
      ></choice-field>
      <choice-field
        label="Cold loop readings are compared with"
        .value=${coldLoopRule}
        .options=${coldRules}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<NonNullable<Limits['coldLoopRule']>>>) =>
          sendLibraryEdit(this, setReckoning({ coldLoopRule: event.detail.value }))}
      ></choice-field>`;
  }

  #limit({ key, label, unit, help }: OwnNumber<NumberLimit>): TemplateResult {
    const counted = key === 'maximumSpurs';
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .help=${help}
      .value=${this.limits[key] ?? null}
      .min=${counted ? 0 : key === 'ambientC' ? 25 : 1}
      .max=${key === 'ambientC' ? 60 : key === 'voltDropPercent' ? 100 : 100_000}
      .whole=${counted}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setLimit(key, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('firm-limits', FirmLimits);
declare global {
  interface HTMLElementTagNameMap {
    'firm-limits': FirmLimits;
  }
}

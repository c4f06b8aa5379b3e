import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Counts } from '#model/library.ts';
import { setCount } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';
import type { OwnNumber } from './own-number.ts';

const ownCounts: readonly OwnNumber<keyof Counts>[] = [
  { key: 'accessoryEndMm', label: 'Cable left at an accessory', unit: 'mm', help: 'Empty: 200' },
  { key: 'jointEndMm', label: 'Cable left at a joint', unit: 'mm', help: 'Empty: 200' },
  { key: 'boardEndMm', label: 'Cable left at a board', unit: 'mm', help: 'Empty: 750' },
  { key: 'slackMm', label: 'Slack of a run', unit: 'mm', help: 'Empty: 300' },
  { key: 'applianceFlexMm', label: 'Flex of a fixed appliance', unit: 'mm', help: 'Empty: 2000' },
  { key: 'boxTailMm', label: 'Earth tail of a steel box', unit: 'mm', help: 'Empty: 150' },
  { key: 'sleeveMm', label: 'Earth sleeving of a cable end', unit: 'mm', help: 'Empty: 120' },
  {
    key: 'metalClipEvery',
    label: 'One clip on a surface is of metal in every',
    unit: '',
    help: 'Empty: 3',
  },
  {
    key: 'metalClipInChannelMm',
    label: 'Between metal clips in channel',
    unit: 'mm',
    help: 'Empty: 1000',
  },
  { key: 'cappingPinMm', label: 'Between pins of capping', unit: 'mm', help: 'Empty: 300' },
  { key: 'channelScrewMm', label: 'Between screws of channel', unit: 'mm', help: 'Empty: 500' },
];

/** Spacings, which nought would make endless. */
const spacings: ReadonlySet<keyof Counts> = new Set([
  'metalClipInChannelMm',
  'cappingPinMm',
  'channelScrewMm',
]);

/** Lengths and counts by the firm's habit, which no drawing tells. */
export class OwnCounts extends LitElement {
  static override properties: PropertyDeclarations = { counts: { attribute: false } };
  static override styles = [
    controlsCss,
    firmGridCss,
    css`
      h2 {
        margin-top: 24px;
      }
    `,
  ];
  declare counts: Counts;

  override render(): TemplateResult {
    return html`<h2>Own lengths and counts</h2>
      <p class="hint">
        What no drawing tells. The usual figures are common practice, from memory, and of no published source: put your own
        in their place.
      </p>
      <div class="grid">${ownCounts.map((count) => this.#count(count))}</div>`;
  }

  #count({ key, label, unit, help }: OwnNumber<keyof Counts>): TemplateResult {
    const isEvery = key === 'metalClipEvery';
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .help=${help}
      .value=${this.counts[key] ?? null}
      .min=${isEvery ? 1 : spacings.has(key) ? 50 : 0}
      .max=${isEvery ? 100 : 20_000}
      .whole=${isEvery}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setCount(key, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('own-counts', OwnCounts);
declare global {
  interface HTMLElementTagNameMap {
    'own-counts': OwnCounts;
  }
}

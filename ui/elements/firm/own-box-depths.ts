import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type DepthAsker, usualBoxDepths } from '#engine/connections/box-depth.ts';
import type { OwnBoxDepths } from '#model/library.ts';
import { setBoxDepth } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';
import { ownFold, ownFoldCss } from './own-fold.ts';

/** What wants a depth of box, and where its usual figure is from. */
interface DepthRow {
  readonly key: DepthAsker;
  readonly label: string;
  readonly from: 'makers’ notes' | 'memory';
}

const rows: readonly DepthRow[] = [
  { key: 'socket-single', label: 'Single socket-outlet', from: 'makers’ notes' },
  { key: 'socket-twin', label: 'Twin socket-outlet', from: 'makers’ notes' },
  { key: 'fused-unit', label: 'Fused connection unit', from: 'memory' },
  { key: 'flex-outlet', label: 'Flex outlet', from: 'memory' },
  { key: 'dp-switch', label: 'Double-pole switch', from: 'memory' },
  { key: 'cooker-control', label: 'Cooker control', from: 'makers’ notes' },
  { key: 'grid', label: 'Grid switch', from: 'memory' },
  { key: 'shaver', label: 'Shaver supply unit', from: 'memory' },
  { key: 'joint', label: 'Joint behind a plate', from: 'memory' },
  { key: 'blank', label: 'Blank plate', from: 'memory' },
  { key: 'other', label: 'Any other accessory', from: 'memory' },
  { key: 'metal', label: 'Flat plate of metal', from: 'makers’ notes' },
  { key: 'usb', label: 'With USB', from: 'makers’ notes' },
  { key: 'rcd', label: 'With an RCD', from: 'memory' },
  { key: 'flex-outlet-of-unit', label: 'Fused unit with a flex outlet', from: 'memory' },
  { key: 'third-cable', label: 'Three cables or more', from: 'memory' },
];

/** The least depths of boxes by the firm's own makers' sheets. */
export class OwnBoxDepthsForm extends LitElement {
  static override properties: PropertyDeclarations = { depths: { attribute: false } };
  static override styles = [
    controlsCss,
    firmGridCss,
    ownFoldCss,
    css`
      h2 {
        margin-top: 24px;
      }
    `,
  ];
  declare depths: OwnBoxDepths;

  override render(): TemplateResult {
    return html`<h2>Least depth of a box</h2>
      <p class="hint">
        The sheet that comes with the accessory counts: put in what yours asks for. A box is as deep as the most that anything
        about it wants.
      </p>
      ${ownFold(
        'Accessories and what they have',
        rows.map((row) => this.#depth(row)),
        rows.filter(({ key }) => this.depths[key] !== undefined).length,
      )}`;
  }

  #depth({ key, label, from }: DepthRow): TemplateResult {
    return html`<number-field
      .label=${label}
      .unit=${'mm'}
      .help=${`From ${from}, while empty: ${usualBoxDepths[key].minimumMm}`}
      .value=${this.depths[key] ?? null}
      .min=${16}
      .max=${100}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setBoxDepth(key, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('own-box-depths', OwnBoxDepthsForm);
declare global {
  interface HTMLElementTagNameMap {
    'own-box-depths': OwnBoxDepthsForm;
  }
}

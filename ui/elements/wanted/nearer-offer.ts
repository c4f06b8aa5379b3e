import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import { type NearerSource, nearerSource } from '../../edits/nearer-source.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { metres } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';

/**
 * Says of a wanted point that another point is nearer than the one it is joined on at, and joins it on there when asked:
 * a point that is moved keeps its source until then. Nothing while it moves, and where its source is the nearest.
 *
 * @fires job-edit
 */
export class NearerOffer extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    pointId: { attribute: false },
    offer: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      p {
        padding: 8px 10px;
        margin: 6px 0 10px;
        font-size: 0.875rem;
        background: var(--copper-wash);
        border-left: 3px solid var(--copper);
      }
      button {
        margin-top: 6px;
      }
    `,
  ];
  declare view: JobView;
  declare pointId: string;
  declare private offer: NearerSource | null;

  constructor() {
    super();
    this.offer = null;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const { view } = this;
    const before = changed.get('view');
    const isSame =
      before !== undefined &&
      before.scheme === view.scheme &&
      before.moving === view.moving &&
      !changed.has('pointId');
    if (isSame) return;
    this.offer =
      view.moving || view.scheme === null
        ? null
        : nearerSource(view.estimate.asFound.worked, view.scheme, this.pointId);
  }

  override render(): TemplateResult {
    return html`<div role="status">${this.offer === null ? nothing : this.#offered(this.offer)}</div>`;
  }

  #offered({ sourceId, savedMm, edit }: NearerSource): TemplateResult {
    const labelOf = labelsOf(this.view.estimate.asFound.worked);
    const [point, source] = [labelOf(this.pointId), labelOf(sourceId)];
    return html`<p>
      ${source} is nearer: joined on there, ${point} needs ${metres(savedMm)} less new cable.<br />
      <button class="small" @click=${() => send(this, 'job-edit', edit)}>Join ${point} on at ${source}</button>
    </p>`;
  }
}
customElements.define('nearer-offer', NearerOffer);
declare global {
  interface HTMLElementTagNameMap {
    'nearer-offer': NearerOffer;
  }
}

import {
  nothing,
  type ReactiveController,
  type ReactiveControllerHost,
  type SVGTemplateResult,
  svg,
} from 'lit';
import { planPointOf } from '#engine/plan/plane.ts';
import { type SheetFrame, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Underlay } from '#model/building.ts';
import { type JobEventDetails, send } from '../../job-events.ts';

type Host = ReactiveControllerHost & EventTarget;

/**
 * The picture that lies under a storey's plan: asked for when the storey has one, drawn as it lies, and not at all where it is
 * hidden or cannot be had.
 */
export class UnderlayPicture implements ReactiveController {
  readonly #host: Host;
  readonly #underlay: () => Underlay | undefined;
  /** The picture that was asked for. */
  #assetId: string | null = null;
  /** Its address in this page; null while there is none. */
  #url: string | null = null;
  /** How much of it is seen while a hand is on the slider; null for as the job says. */
  #previewed: number | null = null;

  constructor(host: Host, underlay: () => Underlay | undefined) {
    this.#host = host;
    this.#underlay = underlay;
    host.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('underlay-previewed', this.#preview);
    addEventListener('online', this.#again);
  }

  hostDisconnected(): void {
    document.removeEventListener('underlay-previewed', this.#preview);
    removeEventListener('online', this.#again);
    this.#letGo();
  }

  /** The form stands beside the plan, not around it: what is previewed is heard where events end up. */
  readonly #preview = (event: CustomEvent<JobEventDetails['underlay-previewed']>): void => {
    this.#previewed = event.detail.opacity;
    this.#host.requestUpdate();
  };

  readonly #again = (): void => {
    if (this.#url === null) this.#letGo();
    this.#host.requestUpdate();
  };

  hostUpdated(): void {
    const assetId = this.#underlay()?.asset ?? null;
    if (assetId === this.#assetId) return;
    this.#letGo();
    this.#assetId = assetId;
    if (assetId === null) return;
    send(this.#host, 'picture-asked', {
      assetId,
      show: (picture) => {
        if (this.#assetId !== assetId || typeof picture === 'string') return;
        this.#url = URL.createObjectURL(picture);
        this.#host.requestUpdate();
      },
    });
  }

  #letGo(): void {
    if (this.#url !== null) URL.revokeObjectURL(this.#url);
    this.#url = null;
    this.#assetId = null;
  }

  template(frame: SheetFrame): SVGTemplateResult | typeof nothing {
    const underlay = this.#underlay();
    if (underlay === undefined || underlay.hidden === true || this.#url === null) return nothing;
    const { widthPx, heightPx, scaleMmPerPx, angleDeg, opacity } = underlay;
    const [x, y] = toSheet(frame, planPointOf([...underlay.at]));
    // On paper y goes down, and turning goes the other way round.
    const lies = `translate(${x} ${y}) rotate(${-angleDeg}) scale(${scaleMmPerPx / frame.scale}) translate(${-widthPx / 2} ${-heightPx / 2})`;
    return svg`<image class="underlay" href=${this.#url} width=${widthPx} height=${heightPx} preserveAspectRatio="none"
      transform=${lies} opacity=${this.#previewed ?? opacity} aria-hidden="true"></image>`;
  }
}

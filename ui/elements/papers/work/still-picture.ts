import { html, nothing, type TemplateResult } from 'lit';
import type { Scene } from '#drawing/scene.ts';
import '../../proof/scene-picture.ts';

/** As wide as a phone's card shows at once; what is wider is scrolled, by keyboard too. */
const WIDE_MM = 56;

/**
 * A picture in which nothing is touched.
 *
 * @param isOnePage whether it goes on one page of paper, if a little smaller.
 */
export const stillPicture = (scene: Scene, isOnePage = false): TemplateResult =>
  html`<scene-picture
    tabindex=${scene.widthMm > WIDE_MM ? 0 : nothing}
    ?one-page=${isOnePage}
    .scene=${scene}
  ></scene-picture>`;

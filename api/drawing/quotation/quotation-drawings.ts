import type { QuotationDocument } from '#engine/quotation/document.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import { svgOf } from '../svg.ts';
import { customerPlans, type DrawingRoom } from './customer-plan.ts';
import { customerLegend } from './customer-symbols.ts';

/** One storey of one scheme as a customer sees it: an SVG true to its mm, with no script, style or outside reference. */
export interface QuotationDrawing {
  readonly schemeId: string;
  readonly storeyName: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly svg: string;
}

/** The drawings of a quotation, kept with it as they are. */
export interface QuotationDrawings {
  /** In the order of the schemes, each from its lowest storey up. */
  readonly storeys: readonly QuotationDrawing[];
  readonly legend: { readonly widthMm: number; readonly heightMm: number; readonly svg: string };
}

/** Two drawings stand side by side on a sheet, and one fills a phone. */
const room: DrawingRoom = { widthMm: 85, heightMm: 108 };

/** Draws what a quotation offers, from the estimate that it was made of. */
export function quotationDrawings(
  { schemes }: Pick<QuotationDocument, 'schemes'>,
  estimate: Pick<Estimate, 'schemes'>,
): QuotationDrawings {
  const plans = schemes.flatMap(({ schemeId }) => {
    const scheme = estimate.schemes.find(({ id }) => id === schemeId);
    return scheme === undefined ? [] : customerPlans(scheme, room).map((plan) => ({ schemeId, ...plan }));
  });
  const legend = customerLegend(new Set(plans.flatMap(({ signs }) => [...signs])));
  return {
    storeys: plans.map(({ schemeId, storeyName, scene }) => ({
      schemeId,
      storeyName,
      widthMm: scene.widthMm,
      heightMm: scene.heightMm,
      svg: svgOf(scene),
    })),
    legend: { widthMm: legend.widthMm, heightMm: legend.heightMm, svg: svgOf(legend) },
  };
}

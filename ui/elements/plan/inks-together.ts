import { type SVGTemplateResult, svg } from 'lit';
import type { Ink, Shape } from '#drawing/scene.ts';
import { shapePath, shapeTemplate } from './shape-template.ts';

/** An outline of these is seen where one lies over the other, so each keeps a path of its own. */
const APART: ReadonlySet<Ink> = new Set<Ink>(['wall-light']);

/**
 * Shapes as SVG, those of one ink as one path where the first of them stands; lettering after all else. It is for what is drawn
 * anew at every movement: a browser styles and lays out each element by itself, and a path costs little more for being long.
 * Shapes of one ink that lie over each other must look alike in any order.
 */
export function inksTogether(shapes: readonly Shape[]): readonly SVGTemplateResult[] {
  const paths = new Map<Ink, string[]>();
  const [apart, lettering]: [SVGTemplateResult[], SVGTemplateResult[]] = [[], []];
  for (const shape of flat(shapes)) {
    if (shape.kind === 'text') lettering.push(shapeTemplate(shape));
    else if (APART.has(shape.ink)) apart.push(shapeTemplate(shape));
    else {
      const known = paths.get(shape.ink);
      if (known === undefined) paths.set(shape.ink, [shapePath(shape)]);
      else known.push(shapePath(shape));
    }
  }
  const together = [...paths].map(
    ([ink, parts]) => svg`<path class=${ink} stroke-linejoin="round" d=${parts.join('')}/>`,
  );
  return [...apart, ...together, ...lettering];
}

type Leaf = Exclude<Shape, { readonly kind: 'group' }>;

const flat = (shapes: readonly Shape[]): readonly Leaf[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? flat(shape.shapes) : [shape]));

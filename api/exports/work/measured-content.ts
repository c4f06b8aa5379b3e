import type { Content } from 'pdfmake/interfaces.js';
import { labelsOf } from '#drawing/label-of.ts';
import { mostOf, readingsChart } from '#drawing/proof/readings-chart.ts';
import {
  checkSaid,
  checkTitle,
  measuredOutcomes,
  POINTS_SAID,
  pointFigures,
  pointHeads,
} from '#drawing/work/measured-words.ts';
import { testGroupWords, verdictSaid } from '#drawing/work/test-sheet-words.ts';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { MeasuredCircuit, MeasuredPoint } from '#engine/work/tests/measured-circuit.ts';
import { measuredProofs } from '#engine/work/tests/measured-proof.ts';
import type { TestSheet } from '#engine/work/tests/sheet-test.ts';
import type { Limits } from '#model/library.ts';
import {
  heading,
  listUnder,
  paragraph,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from '../quotation/pdf-parts.ts';
import { picture } from './picture.ts';

/** What measured values are told of. */
interface Measured {
  readonly scheme: SchemeEstimate;
  readonly sheet: TestSheet;
  readonly limits: Limits;
}

/** The proof of each circuit repeated with what was measured, and expected against measured as a picture. */
export const measuredContent = ({ scheme, sheet, limits }: Measured): readonly Content[] =>
  measuredProofs({ worked: scheme.worked, proof: scheme.proof, limits, sheet }).flatMap((circuit) =>
    circuitContent(scheme, circuit),
  );

function circuitContent(scheme: SchemeEstimate, circuit: MeasuredCircuit): readonly Content[] {
  const { circuitName, checks, contradicted, points, notRead } = circuit;
  const said = checks.map(
    (check): Content => ({
      text: [
        { text: `${checkTitle(check)}: ${measuredOutcomes[check.outcome].word.toLowerCase()}. `, bold: true },
        checkSaid(check),
      ],
    }),
  );
  return [
    ...listUnder(
      [
        heading(`With what was measured: ${circuitName}`),
        paragraph(
          `The checks again, measured values in the place of reckoned ones. They are ours, and no certificate.${notRead === 0 ? '' : ` ${notRead} not read yet.`}`,
        ),
      ],
      said,
    ),
    ...listUnder(
      [subheading('What contradicts the drawing')],
      contradicted.map((test) => `${testGroupWords[test.group].title}: ${test.mark}. ${verdictSaid(test)}`),
    ),
    ...(points.length === 0 ? [] : [pointsTable(points)]),
    ...charts(scheme, circuit),
  ];
}

const FIGURE_MM = 22;
const OUTCOME_MM = 34;

const pointsTable = (points: readonly MeasuredPoint[]): Content =>
  ruledTable({
    title: { text: 'Point by point', style: 'subheading', under: POINTS_SAID },
    heads: ['Point', ...pointHeads, 'Comes out'],
    rows: points.map((point) => [
      { text: point.mark, bold: true },
      ...pointFigures(point).map((text) => ({ text, style: 'figures' })),
      measuredOutcomes[point.outcome].word,
    ]),
    widthsMm: [
      TEXT_WIDTH_MM - pointHeads.length * FIGURE_MM - OUTCOME_MM,
      ...pointHeads.map(() => FIGURE_MM),
      OUTCOME_MM,
    ],
  });

const CHART_MM = 150;
/** So many rows of a chart are surely shorter than a page, the heads of every group counted. */
const ROWS_A_CHART = 30;

/** What was read and expected, in pictures of so many rows as go on a page, all to one scale. */
function charts({ worked, proof }: SchemeEstimate, { circuitId }: MeasuredCircuit): readonly Content[] {
  const own = proof.find(({ circuit }) => circuit === circuitId);
  if (own === undefined) return [];
  const read = comparedReadings(own, readingsTaken(worked.job), 'after').filter(({ fits }) => fits !== null);
  if (read.length === 0) return [];
  const labelOf = labelsOf(worked);
  const mostOhm = mostOf(read);
  const pages = read.flatMap((_, i) => (i % ROWS_A_CHART === 0 ? [read.slice(i, i + ROWS_A_CHART)] : []));
  return pages.map((compared, i) => {
    const scene = readingsChart({
      compared,
      phase: 'after',
      conductorC: own.expected.conductorC,
      widthMm: CHART_MM,
      labelOf: (id) => labelOf(unitOfLoadSide(id)),
      mostOhm,
    });
    return together([
      ...(i === 0 ? [subheading('Expected against measured')] : []),
      picture(scene, CHART_MM),
    ]);
  });
}

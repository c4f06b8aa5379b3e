import { type CircuitPicture, circuitPicture } from '#drawing/proof/circuit-picture.ts';
import { dropCurve } from '#drawing/proof/drop-curve.ts';
import { pointsInOrder } from '#drawing/proof/points-in-order.ts';
import { scenarioWords } from '#drawing/proof/proof-words.ts';
import { worstOfPicture } from '#drawing/proof/worst-of-picture.ts';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import type { CircuitProof, ExpectedAt, PointProof } from '#engine/proof/circuit-proof.ts';
import { type ComparedReading, comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { Reading } from '#model/installation.ts';
import { cableSizeWords } from './cable-words.ts';
import type { CellContent } from './cell-value.ts';
import type { WorkbookContext } from './workbook-context.ts';

/** A row of a table with what its bar shows. */
export interface ProofRow {
  readonly contents: readonly CellContent[];
  /** Share of the limit; null without a figure. */
  readonly share: number | null;
  readonly isNew: boolean;
}

const metres = (lengthMm: number): number => lengthMm / 1000;

/** Cables in the order in which current comes along them: a ring's from end A to end B, its spurs where they hang. */
export function legRows(picture: CircuitPicture): readonly ProofRow[] {
  const { legs, nodes } = picture;
  const ordered = dropCurve(picture).legs.map(({ leg }) => leg);
  const rest = legs.map((_, i) => i).filter((i) => !ordered.includes(i));
  return [...ordered, ...rest].flatMap((i) => {
    const leg = legs[i];
    if (leg === undefined) return [];
    const [from, to] = leg.ends.map((end) => nodes[end]?.label ?? '');
    const isOver = leg.share !== null && leg.share > 1;
    const note = [...(leg.isWorst ? ['most loaded'] : []), ...(isOver ? ['over its Iz'] : [])].join(', ');
    return [
      {
        contents: [
          from ?? '',
          to ?? '',
          `${leg.isNew ? 'new' : 'found'}, ${leg.cable === null ? 'size not known' : cableSizeWords(leg.cable)}`,
          metres(leg.lengthMm),
          leg.isMeasured ? (leg.isNew ? 'way' : 'measured') : 'assumed',
          leg.currentA ?? 'not known',
          leg.izA ?? 'not known',
          leg.share,
          note === '' ? null : note,
        ],
        share: leg.share,
        isNew: leg.isNew,
      },
    ];
  });
}

/** Points in the same order, those that no cable reaches at the end. */
export function pointRows(
  context: WorkbookContext,
  proof: CircuitProof,
  picture: CircuitPicture,
): readonly ProofRow[] {
  const isNew = new Map(picture.nodes.map((node) => [node.subject, node.isNew]));
  return pointsInOrder(proof, picture).map((point) => ({
    contents: [
      context.labelOf(unitOfLoadSide(point.point)),
      isNew.get(unitOfLoadSide(point.point)) === true ? 'new' : 'found',
      point.dropV ?? 'not known',
      point.r1r2ColdOhm ?? 'not known',
      point.r1r2HotOhm ?? 'not known',
      point.zsColdOhm ?? 'not known',
      point.zsHotOhm ?? 'not known',
      point.zsMaxOhm ?? 'not known',
      pointNote(point, proof),
    ],
    share: point.dropV === null ? null : point.dropV / proof.dropLimitV,
    isNew: isNew.get(unitOfLoadSide(point.point)) === true,
  }));
}

function pointNote({ dropV, zsHotOhm, zsMaxOhm }: PointProof, { dropLimitV }: CircuitProof): string | null {
  const words = [
    ...(dropV !== null && dropV > dropLimitV ? ['volt drop over'] : []),
    ...(zsHotOhm !== null && zsMaxOhm !== null && zsHotOhm > zsMaxOhm ? ['Zs over'] : []),
  ];
  return words.length === 0 ? null : words.join(', ');
}

/** What a tester should read: of a ring from end to end and crossed at each point, and the loop of every point. */
export function expectedRows(
  { labelOf }: WorkbookContext,
  { expected: { ring, points } }: CircuitProof,
): readonly (readonly CellContent[])[] {
  const ohmAt = (list: readonly ExpectedAt[] = []): ReadonlyMap<string, number> =>
    new Map(list.map(({ point, ohm }) => [point, ohm]));
  const [step2, step3] = [ohmAt(ring?.step2), ohmAt(ring?.step3)];
  const ends: readonly (readonly CellContent[])[] =
    ring === null
      ? []
      : [
          ['End to end, line', 'r1', ring.r1Ohm],
          ['End to end, neutral', 'rn', ring.rnOhm],
          ['End to end, protective conductor', 'r2', ring.r2Ohm ?? 'none'],
        ];
  return [
    ...ends,
    ...points.map(({ point, r1r2Ohm, zsOhm, zsServiceOhm }) => [
      labelOf(unitOfLoadSide(point)),
      null,
      step2.get(point) ?? null,
      step3.get(point) ?? null,
      r1r2Ohm ?? 'not known',
      zsServiceOhm ?? 'not known',
      zsOhm ?? 'not known',
    ]),
  ];
}

const comparedWords: Readonly<Record<ComparedReading['group'], string>> = {
  ends: 'end to end',
  step2: 'step 2',
  step3: 'step 3',
  r1r2: 'R1 + R2',
  zs: 'Zs',
};

/** Within the band a bar ends at the line: a last digit must not look like a fault. */
const shareOf = (share: number, fits: boolean | null): number => (fits === true ? Math.min(1, share) : share);

/** What was measured beside what is expected, and a bar of the one by the other; what nobody measured is left out. */
export function comparedRows(
  { labelOf, estimate }: WorkbookContext,
  proof: CircuitProof,
  phase: Reading['phase'],
): readonly ProofRow[] {
  const readings = readingsTaken(estimate.asFound.worked.job);
  return comparedReadings(proof, readings, phase).flatMap(
    ({
      group,
      subject,
      name,
      expectedOhm,
      expectedToOhm,
      bandOhm,
      measuredOhm,
      fits,
    }): readonly ProofRow[] => {
      if (measuredOhm === null || expectedOhm === null || expectedToOhm === null) return [];
      const at = name === '' ? labelOf(unitOfLoadSide(subject)) : name;
      const note = fits === false ? 'does not fit' : null;
      return [
        {
          contents: [
            at,
            comparedWords[group],
            expectedOhm,
            expectedToOhm,
            bandOhm,
            measuredOhm,
            null,
            null,
            note,
          ],
          share: expectedToOhm > 0 ? shareOf(measuredOhm / expectedToOhm, fits) : null,
          isNew: false,
        },
      ];
    },
  );
}

/** The worst of every scenario, the handbook's first; one under which nothing can be worked out is left out. */
export function scenarioRows(
  context: WorkbookContext,
  proof: CircuitProof,
): readonly (readonly CellContent[])[] {
  const names = ['handbook', ...proof.otherScenarios.map(({ scenario }) => scenario)] as const;
  return names.flatMap((scenario) => {
    const picture = circuitPicture(context.scheme.worked, proof, scenario);
    if (picture === null) return [];
    const { leg: worst, far } = worstOfPicture(picture);
    if (worst === null && far === null) return [];
    return [
      [
        scenarioWords[scenario],
        worst === null ? null : `${worst.from} to ${worst.to}`,
        far?.label ?? null,
        far?.dropV ?? null,
        null,
        worst?.leg.currentA ?? null,
        null,
        worst?.leg.share ?? null,
      ],
    ];
  });
}

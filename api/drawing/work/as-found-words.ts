import { endToEndBefore, readingsBefore } from '#engine/circuit/readings-before.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { insulationLimit } from '#engine/proof/expected-limits.ts';
import { isClaimedRing } from '#engine/work/claimed-ring.ts';

/** A test before the work, as a row to be filled in. */
export interface AsFoundRow {
  readonly what: string;
  readonly held: string;
  /** What the survey has read; empty where nobody has. */
  readonly read: string;
}

/** The tests of a circuit that was there, before anything is added to it. */
export interface AsFoundTests {
  readonly circuitName: string;
  readonly rows: readonly AsFoundRow[];
}

/** Over such a list: "As found, before the work, dead: Ring"; and under it. */
export const asFoundHeading = (circuitName: string): string =>
  `As found, before the work, dead: ${circuitName}`;
export const AS_FOUND_SAID = 'The work stops at what is not so: see the holds of the tasks.';

const ohms = (ohm: number): string => `${ohm.toFixed(2)}\u00a0Ω`;

/** The dead tests of every circuit of a scheme that was there, with room for what they show and what the survey has of it already. */
export function asFoundTests(worked: Worked): readonly AsFoundTests[] {
  return worked.circuitIds.flatMap((id): readonly AsFoundTests[] => {
    const found = worked.found.circuits.find((circuit) => circuit.id === id);
    if (found === undefined) return [];
    return [
      {
        circuitName: found.name,
        rows: [
          ...insulationRows(worked, id),
          ...(isClaimedRing(worked, id) ? endRows(worked, id) : earthRows()),
          neutralRow(),
        ],
      },
    ];
  });
}

function insulationRows({ job }: Worked, circuitId: string): readonly AsFoundRow[] {
  const held = `at least ${insulationLimit().minimumMegohm}\u00a0MΩ`;
  const read = (between: string): string => {
    const own = readingsBefore(job, 'insulation').findLast(
      (reading) => reading.between === between && reading.circuit === circuitId,
    );
    return own === undefined ? '' : `${own.megohm}\u00a0MΩ at ${own.testV}\u00a0V`;
  };
  return [
    { what: 'Insulation, line and neutral together to earth', held, read: read('LN-cpc') },
    { what: 'Insulation, line to neutral', held, read: read('L-N') },
  ];
}

const conductors = [
  { loop: 'L', what: 'r1, line end to end', held: 'no open ring' },
  { loop: 'N', what: 'rn, neutral end to end', held: 'like r1' },
  { loop: 'cpc', what: 'r2, earth end to end', held: 'closed' },
] as const;

const endRows = ({ job }: Worked, circuitId: string): readonly AsFoundRow[] =>
  conductors.map(({ loop, what, held }) => {
    const ohm = endToEndBefore(job, circuitId, loop);
    return { what, held, read: ohm === null ? '' : ohms(ohm) };
  });

const earthRows = (): readonly AsFoundRow[] => [
  { what: 'R1 + R2 at the far end', held: 'continuous to every point worked on', read: '' },
];

const neutralRow = (): AsFoundRow => ({
  what: 'Its neutral to those of other circuits',
  held: 'no continuity',
  read: '',
});

import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { type LabelPlacer, placesAround } from '../label-placer.ts';
import { findingMark, outcomeOrder } from '../marks.ts';
import type { Shape } from '../scene.ts';
import { LETTERS_MM } from './sheet/lettering.ts';

/** A numbered entry of the list of findings: one sentence, and everything on the sheet that it speaks of. */
export interface NumberedFinding {
  readonly label: string;
  readonly outcome: Exclude<Outcome, 'passes'>;
  readonly finding: Finding;
  readonly subjects: readonly string[];
}

const stopsFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [true, false].flatMap((stop) => findings.filter(({ stopGate }) => stopGate === stop));

/**
 * The findings that get a number on a sheet: all but passes and advice, gravest first, and shut stop gates
 * before others as grave; equal sentences share one. Those of things on another storey are left to that storey's sheet.
 */
export function numberedFindings(
  findings: readonly Finding[],
  isElsewhere: (subject: string) => boolean,
): readonly NumberedFinding[] {
  const entries = new Map<
    string,
    { finding: Finding; outcome: Exclude<Outcome, 'passes'>; subjects: string[] }
  >();
  for (const outcome of outcomeOrder) {
    if (outcome === 'passes' || outcome === 'advice') continue;
    for (const finding of stopsFirst(findings)) {
      if (finding.outcome !== outcome || isElsewhere(finding.subject)) continue;
      const key = `${finding.rule} ${finding.message}`;
      const entry = entries.get(key);
      if (entry === undefined) entries.set(key, { finding, outcome, subjects: [finding.subject] });
      else entry.subjects.push(finding.subject);
    }
  }
  return [...entries.values()].map((entry, i) => ({ ...entry, label: String(i + 1) }));
}

/** Every eighth of a turn first, then between them. */
const ROUND_DEG = [0, 45, -45, 90, -90, 135, -135, 180, 22, -22, 67, -67, 112, -112, 157, -157];

/** Draws the marks beside what they speak of; a finding of nothing on the sheet has none. */
export function markShapes(
  numbered: readonly NumberedFinding[],
  spots: ReadonlyMap<string, SheetPoint>,
  free: LabelPlacer,
): readonly Shape[] {
  return numbered.flatMap((entry) =>
    entry.subjects.flatMap((subject): Shape[] => {
      const spot = spots.get(subject);
      if (spot === undefined) return [];
      const at = free.place('MM', 4, placesAround(spot, [0, 1], 5.5, ROUND_DEG));
      const title = `${entry.finding.rule}: ${entry.finding.message}`;
      return [
        {
          kind: 'group',
          subject,
          title,
          shapes: findingMark(entry.outcome, at, entry.label, LETTERS_MM.notes),
        },
      ];
    }),
  );
}

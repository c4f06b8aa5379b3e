import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { findingMark, outcomeOrder } from '../marks.ts';
import type { Shape } from '../scene.ts';
import { LETTERS_MM } from './sheet/lettering.ts';
import type { SheetLabels } from './sheet/sheet-labels.ts';

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

/** The room that a mark takes, whatever its outline, and from what it stands off at least, mm. */
const MARK_MM = 5.4;
const OFF_MM = 2.4;

/** Draws the marks beside what they speak of; a finding of nothing on the sheet has none. What finds no room is told by the labels. */
export function markShapes(
  numbered: readonly NumberedFinding[],
  spots: ReadonlyMap<string, SheetPoint>,
  labels: SheetLabels,
): readonly Shape[] {
  return numbered.flatMap((entry) =>
    entry.subjects.flatMap((subject): Shape[] => {
      const spot = spots.get(subject);
      if (spot === undefined) return [];
      const size = { wideMm: MARK_MM, highMm: MARK_MM, saidAs: `check ${entry.label}` };
      const at = labels.placeBox(size, { at: spot, halfMm: OFF_MM, into: [0, 1] });
      if (at === null) return [];
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

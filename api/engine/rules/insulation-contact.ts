import { type CheckResult, rule } from './rule.ts';

type Message = 'touching' | 'surrounded' | 'insulatedWall';

/** PVC cable keeps off expanded polystyrene, and thermal insulation lowers what it may carry. */
export const insulationContact = rule({
  id: 'RT10',
  title: 'PVC cable and polystyrene',
  source: 'BS 7671 522.5, 523.9',
  messages: {
    touching:
      'The run touches thermal insulation over {actual} mm: its capacity is lowered, and PVC must not touch polystyrene.',
    surrounded:
      'The run lies in thermal insulation over {actual} mm: its capacity is lowered, and PVC must not touch polystyrene.',
    insulatedWall:
      'The run lies in an insulated wall; what the insulation is, and whether the cable touches it, is not told.',
  },
  remedies: {
    touching: 'Look what the insulation is; part polystyrene from the cable by a sleeve or a strip.',
    surrounded: 'Take the run out of the insulation where that can be done; part polystyrene from the cable.',
    insulatedWall: 'Look into the wall at the first box.',
  },
  couldFail: false,
  check: (facts) =>
    facts.runs.flatMap<CheckResult<Message>>((run) => {
      const subject = { subjectId: run.id, origin: 'scheme', outcome: 'advice' } as const;
      const lengthMm = (insulation: string) =>
        run.segments
          .filter((segment) => segment.insulation === insulation)
          .reduce((sum, segment) => sum + segment.lengthMm, 0);
      const told = (['surrounded', 'touching'] as const).find((insulation) => lengthMm(insulation) > 0);
      if (told) {
        const actual = Math.round(lengthMm(told));
        return [{ ...subject, messageId: told, actual, unit: 'mm' }];
      }
      const untold = run.segments.some(
        ({ insulation, wallId, medium }) =>
          insulation === null &&
          medium === 'stud-cavity' &&
          wallId !== null &&
          facts.plan.wallById.get(wallId)?.wall.insulated === true,
      );
      return untold ? [{ ...subject, messageId: 'insulatedWall' as const }] : [];
    }),
});

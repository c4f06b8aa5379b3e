import { wallsInWords } from '../plan/wall-words.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'partyWall' | 'floor' | 'external';

/** Dwellings that share floors and walls with other dwellings. */
const SHARED: readonly string[] = ['flat', 'hmo', 'higher-risk', 'student', 'care'];

/** Runs through what keeps fire from the neighbours are sealed as the element asks. */
export const fireStopping = rule({
  id: 'RT7',
  title: 'Fire stopping',
  source: 'BS 7671 527.2; Approved Document B',
  messages: {
    partyWall: 'The run goes through {wall}, a party wall, which keeps fire from the neighbours.',
    floor: 'The run goes into or through a floor that may separate dwellings or compartments ({premises}).',
    external: 'The run goes through {wall}, an external wall.',
  },
  remedies: {
    partyWall: 'Choose another way; if there is none, seal to the rating of the wall and record it.',
    floor: 'Find out which floors separate; seal every hole through them to their rating and record it.',
    external: 'Slope the hole outwards, sleeve and seal it.',
  },
  couldFail: false,
  check: (facts) =>
    facts.runs.flatMap<CheckResult<Message>>((run) => {
      const subject = { subjectId: run.id, origin: 'scheme' } as const;
      const through = run.segments.filter(({ medium }) => medium === 'through-wall');
      const party = wallsOf(facts, through, 'party');
      const external = wallsOf(facts, through, 'external');
      if (party !== null)
        return [{ ...subject, outcome: 'decide', messageId: 'partyWall', values: { wall: party } }];
      if (mayPartDwellings(facts.job) && entersFloor(run))
        return [
          {
            ...subject,
            outcome: 'decide',
            messageId: 'floor',
            values: { premises: facts.job.site.premises },
          },
        ];
      if (external === null) return [];
      return [
        {
          ...subject,
          outcome: 'advice',
          messageId: 'external',
          values: { wall: external },
        },
      ];
    }),
});

/** The walls of one kind that these stretches go through, in words; null for none. */
function wallsOf(facts: Facts, segments: readonly Segment[], kind: 'party' | 'external'): string | null {
  const ids = segments.flatMap(({ wallId }) =>
    wallId !== null && facts.plan.wallById.get(wallId)?.wall[kind] === true ? [wallId] : [],
  );
  return ids.length > 0 ? wallsInWords(facts.plan, ids) : null;
}

/** Whether a floor of it may part dwellings. */
export const mayPartDwellings = ({ site }: Pick<Facts['job'], 'site'>): boolean =>
  SHARED.includes(site.premises);

/** In a floor's void, or from one storey to another. */
export function entersFloor(run: Run): boolean {
  const storeys = new Set(run.segments.flatMap(({ from, to }) => [from.storeyId, to.storeyId]));
  return (
    storeys.size > 1 || run.segments.some(({ medium }) => medium.startsWith('void-') || medium === 'riser')
  );
}

import { roomOfPosition } from '../plan/surroundings.ts';
import { rule } from './rule.ts';

/** Supplies to buildings that stand apart are not checked here. */
export const outbuilding = rule({
  id: 'SC2',
  title: 'Outbuildings',
  source: 'common practice; BS 7671 411, 542 for exported earthing',
  messages: {
    outOfScope:
      'The point stands in {actual}, a building apart: its supply and earthing are out of scope here.',
  },
  remedies: { outOfScope: 'Design the outbuilding’s supply on its own.' },
  couldFail: false,
  check: ({ job, plan }) =>
    job.points.flatMap(({ id, status }) => {
      const room = roomOfPosition(plan, plan.positionOfPoint.get(id));
      if (status !== 'wanted' || room?.room.block !== 'detached') return [];
      return [
        {
          outcome: 'decide' as const,
          messageId: 'outOfScope' as const,
          subjectId: id,
          origin: 'scheme' as const,
          actual: room.room.name,
        },
      ];
    }),
});

import { cornerDistances } from '../plan/corners.ts';
import { figures } from './figures.ts';
import { newAccessories } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From the plate's centre line to an inside corner, mm. Source: Approved Document M, M4(2), from memory. */
const ACCESSIBLE_MM = 300;
/** Source: Scottish Building Standards Technical Handbook 4.8.5. */
const SCOTLAND_MM = 350;

/** New outlets are not tucked into corners. */
export const cornerDistance = rule({
  id: 'PO2',
  title: 'Distance from inside corners',
  source: 'Approved Document M, M4(2) dwellings; Scottish Technical Handbook 4.8.5',
  messages: {
    clear: '{actual} mm from the nearest inside corner.',
    near: '{actual} mm from an inside corner; accessible dwellings have {limit} mm. In an existing house that is guidance only.',
  },
  remedies: { near: 'Move it along where people with little reach use the room.' },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap<CheckResult<'clear' | 'near'>>(({ id, position }) => {
      if (!position.onWall) return [];
      const { leftMm, rightMm } = cornerDistances(facts.plan, position.onWall);
      const nearestMm = Math.min(leftMm ?? Number.POSITIVE_INFINITY, rightMm ?? Number.POSITIVE_INFINITY);
      if (nearestMm === Number.POSITIVE_INFINITY) return [];
      const guideMm = facts.job.site.nation === 'scotland' ? SCOTLAND_MM : ACCESSIBLE_MM;
      const limitMm = facts.limits.cornerClearanceMm ?? guideMm;
      const near = nearestMm < limitMm;
      return [
        {
          outcome: near ? 'advice' : 'passes',
          messageId: near ? 'near' : 'clear',
          subjectId: id,
          origin: 'scheme',
          ...figures(nearestMm, limitMm, 'mm'),
        },
      ];
    }),
});

import type { Site } from '#model/building.ts';
import type { Firm } from '#model/library.ts';
import { type Notified, notifiedOf } from '../../rules/notification.ts';
import { findingOf, type Recording } from './recording.ts';

/** Whether building control is told of the work, why, and how. */
export interface BuildingControl {
  /** `due`: it is notified. `ask`: the survey or the sources do not tell. `none`: it is not. */
  readonly state: Notified | 'not-told';
  readonly nation: Site['nation'];
  /** Why, as the check on it says. */
  readonly reason: string;
  /** The ways in which the law of the nation lets it be met; empty where nothing is to be done. */
  readonly ways: readonly string[];
  /** Which way the firm takes, where it has said so. */
  readonly firmsWay: string | null;
  readonly source: string;
}

const SELF =
  'Self-certification by whoever does the work, where they are registered with a scheme for it; a building regulations compliance certificate then follows.';
const BODY = 'Notice to a building control body before the work begins, which then inspects.';

/**
 * How notifiable work is brought into line.
 * Source: Building Regulations 2010 and Approved Document P (England 2013: the certifier as a third party is of England alone);
 * Building (Scotland) Regulations 2004 and the Scottish building standards guidance on warrants and certification.
 */
const waysIn: Readonly<Record<Site['nation'], readonly string[]>> = {
  england: [
    SELF,
    'Inspection, testing and certification by a registered third-party certifier, appointed before the work begins.',
    BODY,
  ],
  wales: [SELF, BODY],
  scotland: [
    'A building warrant where the verifier wants one, asked for before the work begins.',
    'Certification by an approved certifier of construction, or a check by the verifier.',
  ],
  'northern-ireland': [],
};

const firmsWays: Readonly<Record<NonNullable<Firm['notifiedBy']>, string>> = {
  self: 'The firm certifies it itself.',
  'third-party': 'A registered third-party certifier does it.',
  'building-control': 'The firm gives notice to building control.',
};

/** What the check on notification says of a scheme; `not-told` where there is no scheme to judge. */
export function buildingControl(recording: Recording): BuildingControl {
  const { nation } = recording.worked.job.site;
  const finding = findingOf(recording, 'NT1');
  const state = finding === null ? 'not-told' : notifiedOf(finding);
  const isOpen = state === 'due' || state === 'ask';
  const { notifiedBy } = recording.firm;
  return {
    state,
    nation,
    reason: finding?.message ?? 'There is no scheme yet, so nothing can be said of it.',
    ways: isOpen ? waysIn[nation] : [],
    firmsWay: isOpen && notifiedBy !== undefined && nation !== 'scotland' ? firmsWays[notifiedBy] : null,
    source: finding?.source ?? '',
  };
}

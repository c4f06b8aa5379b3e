import type { Site } from '#model/building.ts';
import type { Firm } from '#model/library.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import type { QuotedLine } from './document.ts';
import { type Offered, optionWords, saidByOptions } from './offered.ts';

const certificates: Readonly<Record<string, string>> = {
  installation:
    'When the work is finished and tested you get an electrical installation certificate with its schedules of inspections and test results.',
  minorWork:
    'When the work is finished and tested you get a minor electrical installation works certificate: it says what was done and what the tests showed.',
  minorWorks:
    'When the work is finished and tested you get a minor electrical installation works certificate for each circuit that was worked on, or one installation certificate for all of them.',
};

/** Whether the work is notified, by the message of the rule on it; `due`: somebody has to notify. */
const notifications: Readonly<Record<string, { readonly words: string; readonly due: boolean }>> = {
  notNeeded: {
    words:
      'Building control need not be told: in {nation} that is asked for {list}, and this is none of them.',
    due: false,
  },
  newCircuit: { words: 'Building control has to be told, because a new circuit is made.', due: true },
  newBoard: { words: 'Building control has to be told, because the fuse box is changed.', due: true },
  specialLocation: {
    words: 'Building control has to be told, because the work is close to a bath or shower.',
    due: true,
  },
  bathNotDrawn: {
    words:
      'Part of the work is in a bathroom. Whether building control has to be told depends on how far it is from the bath or shower: to be agreed.',
    due: false,
  },
  walesOlderList: {
    words:
      'In Wales work in a kitchen, in a bathroom or outside seems still to count as notifiable, though sources disagree: we take the stricter reading, so building control is told.',
    due: true,
  },
  scotlandFlat: {
    words:
      'In Scotland fixtures need no building warrant, but for a flat or the like sources disagree: the local authority’s verifier is asked before the work begins.',
    due: false,
  },
  scotlandTall: {
    words:
      'In Scotland rewiring a house of more than two storeys needs a building warrant; whether added sockets do is not settled: the local authority’s verifier is asked before the work begins.',
    due: false,
  },
  scotlandHouse: {
    words:
      'In Scotland electrical work in a house of up to two storeys needs no building warrant. It still has to meet the building regulations.',
    due: false,
  },
  northernIreland: {
    words: 'In Northern Ireland electrical work in a home is not notified to building control.',
    due: false,
  },
};

const notifier: Readonly<Record<NonNullable<Firm['notifiedBy']>, string>> = {
  self: 'We do that ourselves through the scheme that we are registered with, and you get a certificate of compliance with the building regulations.',
  'third-party':
    'A registered third-party certifier inspects the work and does that, and you get a certificate of compliance with the building regulations.',
  'building-control':
    'We tell the council’s building control before the work begins, and you get its completion certificate; its fee is as shown in this price, or else is not in it.',
};

const messageOf = ({ findings }: SchemeEstimate, rule: string): string | null =>
  findings.find((finding) => finding.rule === rule)?.messageId ?? null;

/** Whether somebody has to tell building control of a scheme, in the stricter reading. */
export const isNotifiable = (scheme: SchemeEstimate): boolean =>
  notifications[messageOf(scheme, 'NT1') ?? '']?.due ?? false;

type Nation = Site['nation'];

/** What is notified where something is; the other nations have words of their own. */
const notifiedIn: Partial<Readonly<Record<Nation, string>>> = {
  england: 'new circuits, new fuse boxes and work close to a bath or shower',
  wales: 'new circuits, new fuse boxes and work in kitchens, bathrooms or outside',
};
const nationNames: Readonly<Record<Nation, string>> = {
  england: 'England',
  wales: 'Wales',
  scotland: 'Scotland',
  'northern-ireland': 'Northern Ireland',
};

const ofNation = (words: string, nation: Nation): string =>
  words.replace('{nation}', nationNames[nation]).replace('{list}', notifiedIn[nation] ?? 'other work');

function noticeSaid(
  scheme: SchemeEstimate,
  { notifiedBy }: Pick<Firm, 'notifiedBy'>,
  nation: Nation,
): readonly string[] {
  const found = notifications[messageOf(scheme, 'NT1') ?? ''];
  if (found === undefined) return [];
  if (!found.due) return [ofNation(found.words, nation)];
  return [`${found.words} ${notifiedBy === undefined ? nobodySaid(scheme) : notifier[notifiedBy]}`];
}

/** Where nobody has said who notifies; what it costs may be in the price all the same. */
const nobodySaid = ({ price }: SchemeEstimate): string =>
  price.other.some(({ sum, pence }) => sum === 'notification' && pence > 0)
    ? 'That is in the price; whether we do it through a scheme, a certifier does, or we tell the council’s building control is to be agreed.'
    : 'Who does that: to be agreed.';

/**
 * The certificate that the work ends with, and whether it is notified, why and by whom; options that differ apart.
 * Source: by nation as the rules NT1 and NT2 name it (Approved Document P; Building (Scotland) Regulations 2004;
 * BS 7671 644 and Appendix 6).
 */
export function paperworkOf(
  offered: readonly Offered[],
  firm: Pick<Firm, 'notifiedBy'>,
  nation: Nation,
): readonly QuotedLine[] {
  const certificate = (scheme: SchemeEstimate): readonly string[] => {
    const words = certificates[messageOf(scheme, 'NT2') ?? ''];
    return words === undefined ? [] : [words];
  };
  return [
    ...saidByOptions(offered, certificate),
    ...saidByOptions(offered, (scheme) => noticeSaid(scheme, firm, nation)),
  ].map(({ words, letters }) => ({ words, forOptions: optionWords(letters, offered) }));
}

/** The messages of the two rules that have words here: for the test that holds them against the rules. */
export const paperworkMessages = {
  NT1: Object.keys(notifications),
  NT2: Object.keys(certificates),
} as const;

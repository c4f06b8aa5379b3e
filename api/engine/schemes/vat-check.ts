import { claimWords, type VatClaim } from '../price/vat-claim.ts';
import type { CheckResult } from '../rules/rule.ts';
import { rule } from '../rules/rule.ts';

type Message = 'claimed' | 'missing' | 'refused' | 'otherRate';

const outcomes = { claimed: 'advice', missing: 'decide', refused: 'decide', 'other-rate': 'decide' } as const;

/** A rule about the price rather than the wiring: a rate of value added tax below the standard one has its condition. */
export const vatCheck = (claim: VatClaim, vatPercent: number) =>
  rule<Message>({
    id: 'VA1',
    title: 'The rate of VAT has its condition',
    source: 'Value Added Tax Act 1994, section 29A with Schedule 7A, section 30 with Schedule 8',
    couldFail: false,
    messages: {
      claimed: 'VAT is charged at {percent} %, by this condition: {words}',
      missing: 'VAT is charged at {percent} %. {words}',
      refused: 'VAT is charged at {percent} % for “{label}”. {words}',
      otherRate: 'VAT is charged at {percent} %. {words}',
    },
    remedies: {
      missing: 'Say in Price which condition is claimed, or charge the standard rate.',
      refused: 'Charge the standard rate, or claim another condition.',
      otherRate: 'Say in Price which condition of this rate is claimed, or charge the standard rate.',
    },
    check: ({ scheme }): readonly CheckResult<Message>[] => {
      const { verdict, condition } = claim;
      if (verdict === 'not-needed') return [];
      return [
        {
          outcome: outcomes[verdict],
          messageId: verdict === 'other-rate' ? 'otherRate' : verdict,
          subjectId: scheme?.id ?? 'site',
          origin: 'scheme',
          values: { percent: vatPercent, label: condition?.label ?? '', words: claimWords(claim) },
        },
      ];
    },
  });

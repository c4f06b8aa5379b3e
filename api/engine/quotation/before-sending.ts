import type { Job } from '#model/job.ts';
import type { Firm, Library } from '#model/library.ts';
import { agreedTerms } from '../price/agreed-terms.ts';
import { staleItems } from '../price/list/stale.ts';
import { type Unpriced, unpricedOf } from '../price/unpriced.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { mayCancel } from './cancellation.ts';
import type { BeforeSending } from './document.ts';
import type { KindReason } from './kind-of-paper.ts';
import type { Offered } from './offered.ts';
import { isNotifiable } from './paperwork.ts';
import { listed, pounds } from './said.ts';

/** What is looked at before a paper goes out. */
export interface ToSend {
  readonly job: Job;
  readonly library: Library;
  readonly offered: readonly Offered[];
  readonly reason: KindReason;
  readonly demoNote: string | null;
  /** The day of the paper, ISO. */
  readonly date: string;
}

const isEmpty = (text: string | undefined): boolean => text === undefined || text.trim() === '';

const must = (words: string, where: BeforeSending['where']): BeforeSending => ({
  weight: 'must',
  words,
  where,
});
const should = (words: string, where: BeforeSending['where']): BeforeSending => ({
  weight: 'should',
  words,
  where,
});

/** Why an option cannot be offered as it stands; null where it can. */
export function withheldWords({ complies, findings }: SchemeEstimate): string | null {
  if (complies !== 'no') return null;
  const rules = [
    ...new Set(
      findings.filter(({ outcome, gates }) => outcome === 'fails' && gates).map(({ title }) => title),
    ),
  ];
  const why = rules.length === 0 ? '' : ` (${listed(rules)})`;
  return `This way does not meet the wiring rules as it stands${why}. It is not offered.`;
}

function ofOffer({ job, offered, reason, demoNote }: ToSend): readonly BeforeSending[] {
  if (offered.length === 0) return [must('There is no way of doing the work yet: make one in Ways.', 'ways')];
  const failing = offered.filter(({ scheme }) => scheme.complies === 'no');
  const wanted = job.points.filter(({ status }) => status === 'wanted');
  return [
    ...failing.map(({ scheme }) =>
      must(`“${scheme.name}” fails checks that it causes, or a stop gate is shut: offer another.`, 'ways'),
    ),
    ...(wanted.length === 0 ? [must('No point is wanted yet.', 'wanted')] : []),
    ...(demoNote === null
      ? []
      : [must('The demo’s firm, prices or minutes are in it: put in your own.', 'firm')]),
    ...(reason === 'fixed' && offered.some(({ scheme }) => scheme.complies === 'not-proven')
      ? [
          should(
            'You hold to a price though not all is proven: what turns up otherwise is a change to agree, and may be your loss.',
            'as-found',
          ),
        ]
      : []),
    ...(reason === 'not-proven'
      ? [
          should(
            'It is called an estimate, because not all is proven: see the checks, or hold to the price in Price.',
            'as-found',
          ),
        ]
      : []),
  ];
}

function ofFirm({
  name,
  address,
  contact,
  email,
  paymentDays,
  paymentWays,
  insurance,
  guarantee,
  complaints,
}: Firm): readonly BeforeSending[] {
  const missing = [
    ...(isEmpty(name) ? ['name'] : []),
    ...(address.length === 0 ? ['address'] : []),
    ...(isEmpty(contact) ? ['telephone number'] : []),
  ];
  const wished = [
    ...(isEmpty(email) ? ['an e-mail address'] : []),
    ...(paymentDays === undefined ? ['when an invoice is due'] : []),
    ...(isEmpty(paymentWays) ? ['how it can be paid'] : []),
    ...(isEmpty(insurance) ? ['your insurance'] : []),
    ...(isEmpty(guarantee) ? ['your guarantee, if you give one'] : []),
    ...(isEmpty(complaints) ? ['where complaints go'] : []),
  ];
  return [
    ...(missing.length === 0
      ? []
      : [
          must(
            `The firm’s ${listed(missing)} ${missing.length === 1 ? 'is' : 'are'} missing; the law asks for them.`,
            'firm',
          ),
        ]),
    ...(wished.length === 0 ? [] : [should(`Say on the firm’s page: ${listed(wished)}.`, 'firm')]),
  ];
}

/** Whether the right to cancel is printed because nobody said who the customer is or where the agreement is made. */
function isRightOpen({ quoting }: Job): boolean {
  const isOpen = quoting?.customer === undefined || quoting.agreedAt === undefined;
  return isOpen && mayCancel(quoting, [Number.POSITIVE_INFINITY]);
}

/** What of an offered price counts as nothing, since the firm has no figure for it. */
function ofUnpriced(offered: readonly Offered[]): readonly BeforeSending[] {
  const unpriced = offered.map(({ scheme }) => unpricedOf(scheme));
  const isAny = (of: keyof Unpriced): boolean => unpriced.some((one) => one[of] > 0);
  return [
    ...(isAny('materials')
      ? [must('The price list has no price for some of the material: it counts as nothing.', 'firm')]
      : []),
    ...(isAny('tasks')
      ? [must('Some of the work has no minutes in the labour norms: it counts as nothing.', 'firm')]
      : []),
    ...(isAny('sums')
      ? [must('A sum beside materials and labour has no figure: it counts as nothing.', 'firm')]
      : []),
  ];
}

/** Prices of the offered work that are older than the firm lets them be. */
function ofOldPrices({
  library,
  offered,
  date,
}: Pick<ToSend, 'library' | 'offered' | 'date'>): readonly BeforeSending[] {
  const ages = staleItems(library.prices, date);
  const used = new Set(
    offered
      .flatMap(({ scheme }) => scheme.price.bill.map(({ item }) => item))
      .filter((item) => ages.has(item)),
  );
  const oldest = Math.max(0, ...[...used].map((item) => ages.get(item) ?? 0));
  const prices = used.size === 1 ? 'One of its prices is' : `${used.size} of its prices are`;
  return used.size === 0
    ? []
    : [
        should(
          `${prices} old, up to ${oldest} days: ask the merchant, or say on the firm’s page that they hold.`,
          'firm',
        ),
      ];
}

function ofTerms({ job, library, offered, date }: ToSend): readonly BeforeSending[] {
  const { validDays, vat } = agreedTerms(job.terms, library.terms);
  const { quoting } = job;
  const claims = offered.filter(
    ({ scheme }) => !['not-needed', 'claimed'].includes(scheme.price.vatClaim.verdict),
  );
  return [
    ...(isEmpty(job.site.customer) ? [must('The customer has no name yet.', 'as-found')] : []),
    ...(job.site.address.length === 0 ? [must('The address of the work is missing.', 'as-found')] : []),
    ...(claims.length === 0
      ? []
      : [must('A lower rate of VAT is charged without a condition that serves.', 'price')]),
    ...(vat !== 'not-registered' && isEmpty(library.firm.vatNumber)
      ? [must('VAT is charged, and the firm has no VAT number.', 'firm')]
      : []),
    ...ofUnpriced(offered),
    ...ofOldPrices({ library, offered, date }),
    ...(validDays === null ? [should('How long the price holds is not said.', 'price')] : []),
    ...(isRightOpen(job)
      ? [
          should(
            'Say whether the customer is a consumer and where you agree: until then the right to cancel is printed.',
            'papers',
          ),
        ]
      : []),
    ...(isEmpty(quoting?.start) ? [should('When the work can begin is not said.', 'papers')] : []),
    ...(job.terms.furniture === undefined && job.site.occupied !== false
      ? [should('Who moves the furniture is not said.', 'price')]
      : []),
    ...(library.firm.notifiedBy === undefined && offered.some(({ scheme }) => isNotifiable(scheme))
      ? [should('The work is notifiable, and who notifies it is not said.', 'firm')]
      : []),
  ];
}

/** The paper lists as changes what the price has money set aside for: both together ask twice. */
function ofContingency({ offered }: ToSend): readonly BeforeSending[] {
  const aside = offered.map(({ scheme }) => scheme.price.totals.contingencyPence);
  const most = Math.max(0, ...aside);
  return most === 0
    ? []
    : [
        should(
          `Up to ${pounds(most)} net is set aside in the price for what may turn up, and the paper calls the same things changes that cost more: bear small ones out of it, or set it to nought in Price.`,
          'price',
        ),
      ];
}

/** What the electrician sees to before the paper goes out, what it cannot go without first. */
export function beforeSending(toSend: ToSend): readonly BeforeSending[] {
  const all = [
    ...ofOffer(toSend),
    ...ofTerms(toSend),
    ...ofFirm(toSend.library.firm),
    ...ofContingency(toSend),
  ];
  return [
    ...all.filter(({ weight }) => weight === 'must'),
    ...all.filter(({ weight }) => weight === 'should'),
  ];
}

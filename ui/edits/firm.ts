import type { Finish, PointKind } from '#model/installation.ts';
import type { Terms } from '#model/job.ts';
import type { Firm, Limits } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';
import { type Chased, type Filling, type OwnTerm, putParking, putTerm, putWord } from './terms.ts';

/** The firm's details that are a line of text. */
export type FirmDetail = Exclude<keyof Firm, 'address' | 'notifiedBy' | 'paymentDays'>;

/**
 * Sets one line of the firm's details; what need not be there goes when it is emptied. Without a VAT number the firm is
 * not registered.
 */
export const setFirmDetail = (detail: FirmDetail, value: string): LibraryEdit => ({
  label: 'Change the firm’s details',
  change: ({ firm, terms }) => {
    if (value.trim() === '' && detail !== 'name' && detail !== 'contact') {
      delete firm[detail];
      if (detail === 'vatNumber') terms.vat = 'not-registered';
    } else firm[detail] = value;
  },
});

/** Says who tells building control where work is notifiable; null: nobody has said. */
export const setNotifiedBy = (by: NonNullable<Firm['notifiedBy']> | null): LibraryEdit => ({
  label: 'Change who notifies work',
  change: ({ firm }) => {
    if (by === null) delete firm.notifiedBy;
    else firm.notifiedBy = by;
  },
});

/** Sets the days until an invoice is due; nought: on completion; null: nobody has said. */
export const setPaymentDays = (days: number | null): LibraryEdit => ({
  label: 'Change when an invoice is due',
  change: ({ firm }) => {
    if (days === null) delete firm.paymentDays;
    else firm.paymentDays = days;
  },
});

/** Sets whether prices are held to or hours are charged where a job does not say; null: by how much is proven. */
export const setFirmCharging = (charging: NonNullable<Terms['charging']> | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putWord(terms, 'charging', charging),
});

/** Says whether the firm is registered for VAT. One that is not has no number, and no job of its charges any. */
export const setRegistered = (registered: boolean): LibraryEdit => ({
  label: registered ? 'Register the firm for VAT' : 'Take the firm off VAT',
  change: ({ firm, terms }) => {
    if (!registered) {
      delete firm.vatNumber;
      terms.vat = 'not-registered';
    } else if (terms.vat === 'not-registered') terms.vat = 'standard';
  },
});

/** Sets the firm's address, a line each; empty lines are left out. */
export const setFirmAddress = (text: string): LibraryEdit => ({
  label: 'Change the firm’s address',
  change: ({ firm }) => {
    firm.address = text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '');
  },
});

/** The firm's own limits that are numbers. */
export type NumberLimit = Exclude<keyof Limits, 'voltDropCorrected' | 'coldLoopRule'>;

/** Sets one of the firm's own limits; null leaves it to the rule. */
export const setLimit = (limit: NumberLimit, value: number | null): LibraryEdit => ({
  label: value === null ? 'Leave a limit to the rule' : 'Set a limit of the firm’s own',
  change: ({ limits }) => {
    if (value === null) delete limits[limit];
    else limits[limit] = value;
  },
});

/** Sets how the firm reckons volt drop and cold loop readings; nothing given leaves it to the default. */
export const setReckoning = (
  reckoning: Pick<Limits, 'voltDropCorrected'> | Pick<Limits, 'coldLoopRule'>,
): LibraryEdit => ({
  label: 'Change how the firm reckons',
  change: ({ limits }) => {
    Object.assign(limits, reckoning);
  },
});

/** The firm's terms that are numbers and may be left out. */
export type FirmTerm = OwnTerm;

/** Sets one of the firm's usual terms; null takes it away. A firm has a mark-up or a margin, one kind of deposit. */
export const setFirmTerm = (term: FirmTerm, value: number | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putTerm(terms, term, value),
});

/** Sets what the firm puts mark-up or margin on where a job does not say; null: by what its hourly rate is. */
export const setFirmProfitOn = (on: Terms['profitOn'] | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putWord(terms, 'profitOn', on),
});

/** Sets what the firm fills chases with where a job does not say; null: what is usual. */
export const setFirmFilling = (filling: Filling | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putWord(terms, 'filling', filling),
});

/** Sets how the firm’s plates look where neither job nor point says; null: white moulded. */
export const setFirmFinish = (finish: Finish | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putWord(terms, 'finish', finish),
});

/** Sets what the firm chases cables in where a job does not say; null: what is usual. */
export const setFirmChased = (chased: Chased | null): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => putWord(terms, 'chased', chased),
});

/** Sets the height at which the firm fits plates of a kind, mm above the floor; null leaves it to what is usual. */
export const setFirmHeight = (kind: PointKind, heightMm: number | null): LibraryEdit => ({
  label: 'Change the firm’s heights',
  change: ({ terms }) => {
    const heights = { ...terms.heights };
    if (heightMm === null) delete heights[kind];
    else heights[kind] = heightMm;
    if (Object.keys(heights).length === 0) delete terms.heights;
    else terms.heights = heights;
  },
});

/** Sets the labour level or the VAT that new jobs begin with. */
export const setFirmTermWord = (words: Pick<Terms, 'labour'> | Pick<Terms, 'vat'>): LibraryEdit => ({
  label: 'Change the firm’s terms',
  change: ({ terms }) => {
    Object.assign(terms, words);
  },
});

/** Says whether the firm's jobs are charged for parking on each day on site; null: not unless a job says so. */
export const setFirmParking = (parking: Terms['parking'] | null): LibraryEdit => ({
  label: 'Change what parking is charged for',
  change: ({ terms }) => putParking(terms, parking),
});

import type { Site } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Finding } from '../../rules/finding.ts';
import type { QuotedForm, QuotedParty, QuotedPassage } from '../document.ts';
import { customerParty, firmParty } from '../parties.ts';
import { dayWords } from '../said.ts';
import { type Danger, dangersOf } from './dangers.ts';

/** A letter to the customer on what was found dangerous: plain data, every word as printed. */
export interface DangerLetter {
  readonly title: string;
  readonly reference: string;
  readonly jobTitle: string;
  /** The job's state, as on every paper. */
  readonly state: string;
  /** ISO. */
  readonly date: string;
  readonly dateWords: string;
  readonly demoNote: string | null;
  readonly firm: QuotedParty;
  readonly customer: QuotedParty;
  /** Where it was found. */
  readonly place: readonly string[];
  readonly opening: readonly string[];
  readonly dangers: readonly Danger[];
  /** What the letter is, and is not. */
  readonly about: QuotedPassage;
  /** What was done on the spot, filled in by hand. */
  readonly done: QuotedForm;
  /** Who gave the letter and who received it, filled in by hand. */
  readonly receipt: QuotedForm;
}

/** What a letter is made from. */
export interface DangerRequest {
  readonly job: Job;
  readonly library: Library;
  /** Of the house as found. */
  readonly findings: readonly Finding[];
  /** ISO. */
  readonly date: string;
  readonly state: string;
  readonly demoNote: string | null;
}

/**
 * The letter that tells a customer in writing of a dangerous condition: what was found, what it can do, what must not be done,
 * what is to be done and by whom.
 *
 * @returns null where nothing was found that shuts a stop gate; what nobody has looked at is no finding.
 * Source: that work stops and the client is told in writing is recommended where BS 7671 132.16 is not met, and follows from the
 * Electricity at Work Regulations 1989; the layout and the words are our own.
 */
export function dangerLetterOf(request: DangerRequest): DangerLetter | null {
  const { job, library, findings, date, state, demoNote } = request;
  const dangers = dangersOf(job, findings);
  if (dangers.length === 0) return null;
  const firm = firmParty(library.firm, false);
  return {
    title: 'Dangerous condition',
    reference: job.reference,
    jobTitle: job.title,
    state,
    date,
    dateWords: dayWords(date),
    demoNote,
    firm,
    customer: customerParty(job),
    place: job.site.address,
    opening: openingOf(job.site, dangers.length),
    dangers,
    about: {
      heading: 'What this letter is',
      paragraphs: [
        'It tells you what we came upon. We have not inspected the whole house: there may be more. It is no certificate, and no report on the condition of all the wiring; that is work of its own, which you can order.',
        ...copies(job.site),
      ],
    },
    done: {
      heading: 'What was done on the spot',
      intro: ['Filled in by hand, when the letter is given.'],
      lines: blank(
        'Switched off, locked or made out of reach',
        'With whose agreement',
        'Which company was told, by whom, when',
        'What the customer did not agree to',
      ),
    },
    receipt: {
      heading: 'Given and received',
      intro: ['Your signature says that you have received this letter, and nothing else.'],
      lines: blank(
        `Given for ${firm.name} by`,
        'Signature and date',
        'Received by',
        'Signature and date of receipt',
      ),
    },
  };
}

const blank = (...labels: readonly string[]): QuotedForm['lines'] =>
  labels.map((label) => ({ label, value: '' }));

function openingOf({ surveyedOn, certainty }: Site, count: number): readonly string[] {
  const isDated = surveyedOn !== undefined && certainty?.surveyedOn !== 'unknown';
  const when = isDated ? `On ${dayWords(surveyedOn)} we` : 'We';
  const what =
    count === 1
      ? 'there is a condition that is dangerous'
      : `there are ${count} conditions that are dangerous`;
  return [
    `${when} looked at the electrical installation at the address above, and ${what} as it stands today. Please read this letter now, tell whoever lives there, and keep it.`,
    'We add nothing to the installation before this has been put right.',
  ];
}

/** Whoever answers for the wiring has to know as well. */
function copies({ tenure }: Site): readonly string[] {
  switch (tenure) {
    case 'owner':
      return [];
    case 'tenant':
      return ['Give your landlord, or who manages the house for them, a copy of this letter today.'];
    case 'leaseholder':
      return [
        'Parts of the wiring may belong to the owner of the building: give them a copy of this letter today.',
      ];
    case undefined:
      return ['If the house is not yours, give its owner a copy of this letter today.'];
  }
}

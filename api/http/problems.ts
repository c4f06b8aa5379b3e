import type { Fault } from '#model/fault.ts';

/** Every problem that the server answers with: its code, the status that goes with it, and its title. */
export const problems = {
  'request-faulty': { status: 400, title: 'The address or a header of the request is faulty' },
  'not-json': { status: 400, title: 'The body is not JSON' },
  'not-utf-8': { status: 400, title: 'The body is not UTF-8 text' },
  'broken-off': { status: 400, title: 'The connection broke off before the request had come' },
  'not-signed-in': { status: 401, title: 'Nobody is signed in' },
  'sign-in-refused': { status: 401, title: 'Address and password do not go together' },
  'not-allowed': { status: 403, title: 'This account may not do that' },
  'foreign-origin': { status: 403, title: 'Another site may not change anything here' },
  'no-such-address': { status: 404, title: 'There is nothing at this address' },
  'no-such-job': { status: 404, title: 'There is no such job' },
  'no-such-revision': { status: 404, title: 'There is no such revision of the job' },
  'no-such-scheme': { status: 404, title: 'The job has no such scheme' },
  'no-such-storey': { status: 404, title: 'The job has no such storey to draw' },
  'no-letter-due': { status: 404, title: 'Nothing found in the job asks for that letter' },
  'no-such-quotation': { status: 404, title: 'The job has no such quotation' },
  'no-such-variation': { status: 404, title: 'The quotation has no such variation' },
  'no-such-person': { status: 404, title: 'The firm has no such person' },
  'no-such-invitation': { status: 404, title: 'This link for a password does not go, or goes no longer' },
  'no-such-link': { status: 404, title: 'This link shows nothing, or nothing any longer' },
  'no-such-photo': { status: 404, title: 'There is no such photo' },
  'quotation-erased': { status: 410, title: 'What the quotation said was erased' },
  'method-not-allowed': { status: 405, title: 'This address does not take that method' },
  'job-id-taken': { status: 409, title: 'Another job has that id' },
  'quotation-id-taken': { status: 409, title: 'Another quotation or variation has that id' },
  'email-taken': { status: 409, title: 'That e-mail address has an account already' },
  'last-owner': { status: 409, title: 'A firm keeps an owner' },
  'not-ready': { status: 409, title: 'The quotation is not ready to be sent' },
  'not-now': { status: 409, title: 'As the quotation stands, that cannot be done' },
  'stale-revision': { status: 412, title: 'Somebody saved it since you read it' },
  'stale-library': { status: 412, title: 'Prices or norms were saved since you read them' },
  'body-too-large': { status: 413, title: 'The body is too large' },
  'wrong-content-type': { status: 415, title: 'The body must be of the kind that belongs there' },
  'wrong-host': { status: 421, title: 'This server does not go by that name' },
  'body-unreadable': { status: 422, title: 'The body cannot be read' },
  'job-unreadable': { status: 422, title: 'The job cannot be read' },
  'library-unreadable': { status: 422, title: 'The library cannot be read' },
  'sheet-unreadable': { status: 422, title: 'The file cannot be read as a list' },
  'photo-unreadable': { status: 422, title: 'The file is no photo that is kept here' },
  'beyond-bounds': { status: 422, title: 'The body holds more than any job does' },
  'id-differs': { status: 422, title: 'The job’s id is not the one in the address' },
  'if-match-missing': { status: 428, title: 'Say which revision is to be replaced' },
  'too-many-attempts': { status: 429, title: 'Too many attempts' },
  'stored-damaged': { status: 500, title: 'What is stored of it is damaged' },
  'store-away': { status: 503, title: 'The store does not answer at this moment' },
  'store-trouble': { status: 503, title: 'The store cannot be read or written at this moment' },
  internal: { status: 500, title: 'The server could not do this' },
} as const satisfies Readonly<Record<string, { readonly status: number; readonly title: string }>>;

export type ProblemCode = keyof typeof problems;

/** A fault as an answer carries it. */
export type AnswerFault = Pick<Fault, 'path' | 'message' | 'remedy'>;

/** What some problems tell beside their code. */
export interface ProblemDetails {
  /** The first hundred at most. */
  readonly faults?: readonly AnswerFault[];
  /** How many faults there are beyond those listed. */
  readonly moreFaults?: number;
  readonly currentRevision?: number;
  /** What to send as If-Match once that revision has been read. */
  readonly currentEtag?: string;
  readonly savedAt?: string;
  readonly limitBytes?: number;
  /** After how many seconds it is worth while to ask again, as the header Retry-After has it. */
  readonly retryAfterS?: number;
  /** The ids or methods that would have served. */
  readonly choices?: readonly string[];
}

/** The one shape of every error's body: problem details as RFC 9457 has them, and a code. */
export interface ProblemBody extends ProblemDetails {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly code: ProblemCode;
}

/** How many faults an answer lists: enough to mend by, too few to be a burden. */
const MOST_FAULTS = 100;

/** The faults as an answer carries them, a hundred at most, with the number of those left out. */
export function faultDetails(faults: readonly AnswerFault[]): Pick<ProblemDetails, 'faults' | 'moreFaults'> {
  const listed = faults.slice(0, MOST_FAULTS).map(({ path, message, remedy }) => ({ path, message, remedy }));
  return faults.length > MOST_FAULTS
    ? { faults: listed, moreFaults: faults.length - MOST_FAULTS }
    : { faults: listed };
}

/** Thrown by whatever cannot answer a request; `app.ts` writes every one of them. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly details: ProblemDetails;

  /** @param detail what went wrong this time and what to do about it, in words for people. */
  constructor(code: ProblemCode, detail: string, details: ProblemDetails = {}) {
    super(detail);
    this.code = code;
    this.details = details;
  }
}

/** The body that tells a problem; its `type` leads to the list of problems. */
export function problemBody({ code, message, details }: Problem): ProblemBody {
  const { status, title } = problems[code];
  return { type: `/api/problems#${code}`, title, status, detail: message, code, ...details };
}

import type { Draft } from 'immer';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Certainty } from '#model/primitives.ts';
import type { WaysAsk } from './controllers/way-finder.ts';
import type { Corners } from './house/straighten.ts';
import type { PlanView, StepPart } from './job-view.ts';
import type { PlanStand } from './moved/moved-sight.ts';
import type { PlanAnswer } from './plan-asks.ts';
import type { QuotationAsk } from './quotations/quotations-view.ts';
import type { DrawAsk } from './way-drawing/way-draft.ts';

/** A change to a job, written on a draft of it; made by the functions in `edits/`. */
export type JobChange = (draft: Draft<Job>) => void;

/** An edit as people undo it: changes of one `group` that follow each other are one step back. */
export interface JobEdit {
  /** What was done, as undo names it: "Move W1". */
  readonly label: string;
  readonly change: JobChange;
  readonly group?: string;
  /** True while the thing still moves under the hand: the whole estimate waits. */
  readonly moving?: boolean;
  /** For what a person enters of the survey: marks how sure it is, by what they go by just then. */
  readonly marked?: (certainty: Certainty) => JobChange;
}

/** Where on a storey something was dropped or tapped. */
export interface PlacedAt {
  readonly pointId: string;
  readonly place: Place;
  readonly phase: 'move' | 'end';
  /** How the plan stands on which it moves; null where it came to rest. */
  readonly stand: PlanStand | null;
}

/** How a picture is straightened: where it shows the corners of a rectangle, and how large that is in truth. */
export interface Straightening {
  /** Upper left, upper right, lower right, lower left, px of the picture. */
  readonly corners: Corners;
  /** Null where nobody has said: as the picture shows it. */
  readonly widthMm: number | null;
  readonly heightMm: number | null;
}

/** What photos are of: a thing that goes by an id, or the supply where it comes in. */
export type PhotoOf =
  | { readonly kind: 'point' | 'board' | 'room'; readonly id: string }
  | { readonly kind: 'supply' };

/**
 * A picture as it can be shown at this moment. `away`: it is not on this device, and there is no connection; `not-there`: the
 * server has it not, or not yet.
 */
export type SeenPicture = Blob | 'away' | 'not-there';

/** What is to be shown of the house. */
export interface ViewShown {
  readonly view: PlanView;
  readonly circuitId?: string;
  /** The thing to be chosen in it. */
  readonly subjectId?: string;
}

/** The events by which elements ask the job's page for something; all bubble and cross shadow roots. */
export interface JobEventDetails {
  /** Change the job. */
  'job-edit': JobEdit;
  /** Change the job, after a copy of it as it is was put on the list under its title and this name. */
  'job-edit-beside': { readonly edit: JobEdit; readonly copyName: string };
  /** Look at a thing, or at nothing. */
  'thing-chosen': { readonly subjectId: string | null };
  /** Light things on the plan; none puts the lights out. */
  'things-lit': { readonly subjectIds: readonly string[] };
  /** Show another scheme. */
  'scheme-shown': { readonly schemeId: string };
  /** Show another storey. */
  'storey-shown': { readonly storeyId: string };
  /** Show the plan or a picture of a circuit; what is left out stays as it is. */
  'view-shown': ViewShown;
  /** Show another part of the step. */
  'step-part-shown': { readonly part: StepPart };
  /** Go to another page or step; an address within the product. */
  'page-asked': { readonly href: string };
  /** A job went off the list, or came back: other windows may have it open. */
  'list-changed': null;
  /** Go on with the newest version of the product. */
  'update-asked': null;
  /** Ask once more for the parts of the screen that could not be had. */
  'parts-asked': null;
  /** Load the page again, once all that is typed is kept. */
  'reload-asked': null;
  /** A point is being dragged or was placed on the plan. */
  'point-placed': PlacedAt;
  /** Something is asked of the search for ways. */
  'ways-asked': WaysAsk;
  /** Something is asked of the job's quotations: issued, answered, varied. */
  'quotation-asked': QuotationAsk;
  /** A way is drawn by hand: begun, led on, taken back, put away. */
  'way-drawn': DrawAsk;
  /** A place on the plan was tapped while a tool waited for one. */
  'place-tapped': { readonly place: Place };
  /** Photos were taken or chosen of a thing, by its name. */
  'photos-taken': { readonly of: PhotoOf; readonly name: string; readonly files: readonly File[] };
  /** A picture was taken or chosen to lie under a storey's plan. */
  'underlay-chosen': { readonly storeyId: string; readonly file: File };
  /** Straighten the picture under a storey's plan. */
  'underlay-straightened': { readonly storeyId: string } & Straightening;
  /** A hand is on the slider of how much of a picture is seen; null: it has let go. */
  'underlay-previewed': { readonly opacity: number | null };
  /** Make one file of the job and its pictures, on this device. */
  'archive-asked': null;
  /** Show a picture of the job: it is given by `show`, once. */
  'picture-asked': { readonly assetId: string; readonly show: (picture: SeenPicture) => void };
  /** What else comes of a tool of the plan. */
  'plan-answered': PlanAnswer;
  /** Take the last change to the job back. */
  'undo-asked': null;
}

/** Sends one of the job's events from an element. */
export function send<K extends keyof JobEventDetails>(
  from: EventTarget,
  name: K,
  detail: JobEventDetails[K],
): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}

declare global {
  interface DocumentEventMap {
    'underlay-previewed': CustomEvent<JobEventDetails['underlay-previewed']>;
  }
  interface HTMLElementEventMap {
    'job-edit': CustomEvent<JobEventDetails['job-edit']>;
    'job-edit-beside': CustomEvent<JobEventDetails['job-edit-beside']>;
    'thing-chosen': CustomEvent<JobEventDetails['thing-chosen']>;
    'things-lit': CustomEvent<JobEventDetails['things-lit']>;
    'scheme-shown': CustomEvent<JobEventDetails['scheme-shown']>;
    'storey-shown': CustomEvent<JobEventDetails['storey-shown']>;
    'view-shown': CustomEvent<JobEventDetails['view-shown']>;
    'step-part-shown': CustomEvent<JobEventDetails['step-part-shown']>;
    'list-changed': CustomEvent<JobEventDetails['list-changed']>;
    'page-asked': CustomEvent<JobEventDetails['page-asked']>;
    'update-asked': CustomEvent<JobEventDetails['update-asked']>;
    'point-placed': CustomEvent<JobEventDetails['point-placed']>;
    'ways-asked': CustomEvent<JobEventDetails['ways-asked']>;
    'place-tapped': CustomEvent<JobEventDetails['place-tapped']>;
    'photos-taken': CustomEvent<JobEventDetails['photos-taken']>;
    'underlay-chosen': CustomEvent<JobEventDetails['underlay-chosen']>;
    'underlay-straightened': CustomEvent<JobEventDetails['underlay-straightened']>;
    'underlay-previewed': CustomEvent<JobEventDetails['underlay-previewed']>;
    'archive-asked': CustomEvent<JobEventDetails['archive-asked']>;
    'picture-asked': CustomEvent<JobEventDetails['picture-asked']>;
    'plan-answered': CustomEvent<JobEventDetails['plan-answered']>;
    'undo-asked': CustomEvent<JobEventDetails['undo-asked']>;
    'quotation-asked': CustomEvent<JobEventDetails['quotation-asked']>;
    'way-drawn': CustomEvent<JobEventDetails['way-drawn']>;
  }
}

import { html, type TemplateResult } from 'lit';
import type { Job } from '#model/job.ts';
import type { JobView } from '../../job-view.ts';
import { counted } from '../../written.ts';
import '../house/room-list.ts';
import './board-list.ts';
import './circuit-list.ts';
import './house-facts.ts';
import './leg-list.ts';
import type { OrderSight } from './order-tapping.ts';
import './point-list.ts';
import './reading-list.ts';
import type { FoundSection } from './section-of-thing.ts';
import './supply-facts.ts';

/** What a section is shown from. */
export interface SectionSight {
  readonly view: JobView;
  /** The thing that the plan waits to be shown the place of; null for none. */
  readonly placingId: string | null;
  /** True while each tap on the plan makes a point. */
  readonly tapping: boolean;
  /** How the order of a circuit's points is being made; null where none is. */
  readonly order: OrderSight | null;
}

/** A section of the step As found: its head is always shown, its body once it is open. */
export interface SectionOfStep {
  readonly id: FoundSection;
  readonly title: string;
  /** How far it has got, in a few words. */
  readonly state: (job: Job) => string;
  readonly body: (sight: SectionSight) => TemplateResult;
}

/** The earthing in a word, and that it is only assumed. */
function earthingWords({ earthing, certainty }: Job['supply']): string {
  if (earthing === undefined || certainty?.earthing === 'unknown') return 'Earthing not known';
  return certainty?.earthing === 'assumed' ? `${earthing} (assumed)` : earthing;
}

const roomCount = (storeys: Job['storeys']): number =>
  storeys.reduce((sum, { rooms }) => sum + rooms.length, 0);
const foundCount = ({ points }: Job): number => points.filter(({ status }) => status !== 'wanted').length;

/** The sections of the survey, in the order of a walk through a house. */
export const foundSections: readonly SectionOfStep[] = [
  {
    id: 'house',
    title: 'House',
    state: ({ site }) => site.customer,
    body: ({ view }) => html`<house-facts .view=${view}></house-facts>`,
  },
  {
    id: 'rooms',
    title: 'Rooms and walls',
    state: ({ storeys }) => counted(roomCount(storeys), 'room'),
    body: ({ view }) => html`<room-list .view=${view}></room-list>`,
  },
  {
    id: 'supply',
    title: 'Supply and board',
    state: ({ supply, boards }) => `${earthingWords(supply)}, ${counted(boards.length, 'board')}`,
    body: ({ view, placingId }) => html`<board-list .view=${view} .placing=${placingId}></board-list>
      <supply-facts .view=${view}></supply-facts>`,
  },
  {
    id: 'circuits',
    title: 'Circuits',
    state: ({ circuits }) => counted(circuits.length, 'circuit'),
    body: ({ view }) => html`<circuit-list .view=${view}></circuit-list>`,
  },
  {
    id: 'points',
    title: 'Points',
    state: (job) => counted(foundCount(job), 'point'),
    body: ({ view, placingId, tapping }) =>
      html`<point-list .view=${view} .placing=${placingId} .tapping=${tapping}></point-list>`,
  },
  {
    id: 'cables',
    title: 'Cables',
    state: ({ legs }) => counted(legs.length, 'cable'),
    body: ({ view, order }) => html`<leg-list .view=${view} .order=${order}></leg-list>`,
  },
  {
    id: 'readings',
    title: 'Readings',
    state: ({ readings }) => counted(readings.length, 'reading'),
    body: ({ view }) => html`<reading-list .view=${view}></reading-list>`,
  },
];

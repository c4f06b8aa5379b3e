import type { Filling } from '../ways/way-tariff.ts';
import type { TaskId } from './known-tasks.ts';

/** What fills a metre of chase, and what makes good round one box, by how many coats are put on. */
export const fillingTasks = {
  'one-coat': { chase: 'fill-chase', box: 'fill-box' },
  'bonding-and-finish': { chase: 'fill-chase-two-coats', box: 'fill-box-two-coats' },
} as const satisfies Readonly<Record<Filling, { readonly chase: TaskId; readonly box: TaskId }>>;

const ways = Object.values(fillingTasks);

/** Every task that fills a chase, however it is filled. */
export const chaseFillings: readonly TaskId[] = ways.map(({ chase }) => chase);

/** Every task that makes good round a box, however it is filled. */
export const boxFillings: readonly TaskId[] = ways.map(({ box }) => box);

/** All work with plaster. */
export const plasterTasks: ReadonlySet<string> = new Set([...chaseFillings, ...boxFillings]);

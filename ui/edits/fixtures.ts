import type { Fixture } from '#model/building.ts';
import { type AlongSide, boxAlong, isPastSide } from '../house/along-side.ts';
import { fixtureWords } from '../house/fixture-kinds.ts';
import type { RoomSide } from '../house/room-sides.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { putCertainty } from './facts.ts';
import type { HouseEdit } from './house.ts';

/** Why a box cannot stand where it is asked for; null where it can. */
const whyNot = (side: RoomSide, box: AlongSide): string | null => {
  if (box.widthMm <= 0 || box.depthMm <= 0) return 'It has to have a width and a depth.';
  return isPastSide(side, box) ? 'It reaches past the wall there.' : null;
};

/** A fixture as it is put into a room. */
export interface NewFixture {
  readonly kind: Fixture['kind'];
  readonly side: RoomSide;
  readonly box: AlongSide;
  readonly heights: Pick<Fixture, 'fromMm' | 'toMm'>;
  /** Which of it is as usual, and nobody has measured. */
  readonly assumed: readonly ('outline' | 'fromMm' | 'toMm')[];
}

/** Puts a fixture along a side of a room; why not where it reaches past it. */
export function addFixture(storeyId: string, { kind, side, box, heights, assumed }: NewFixture): HouseEdit {
  const why = whyNot(side, box);
  if (why !== null) return { ok: false, why };
  const fixture: Fixture = { id: newId(), kind, outline: boxAlong(side, box), ...heights };
  for (const fact of assumed) putCertainty(fixture, fact, 'assumed');
  return {
    ok: true,
    edit: {
      label: `Add a ${fixtureWords[kind].toLowerCase()}`,
      change: ({ storeys }) =>
        void storeys.find(({ id }) => id === storeyId)?.fixtures.push(structuredClone(fixture)),
    },
  };
}

/** The change of a fixture that is there, under its name; nothing where it is not there any more. */
const change = (
  storeyId: string,
  { id, kind }: Pick<Fixture, 'id' | 'kind'>,
  put: (fixture: Fixture) => void,
): JobEdit => ({
  label: `Change a ${fixtureWords[kind].toLowerCase()}`,
  change: ({ storeys }) => {
    const fixture = storeys.find((storey) => storey.id === storeyId)?.fixtures.find((one) => one.id === id) as
      | Fixture
      | undefined;
    if (fixture !== undefined) put(fixture);
  },
});

/** Has a fixture stand elsewhere, or be larger or smaller: that counts as seen. Why not where it reaches past its side. */
export function placeFixture(
  storeyId: string,
  fixture: Pick<Fixture, 'id' | 'kind'>,
  { side, box }: Pick<NewFixture, 'side' | 'box'>,
): HouseEdit {
  const why = whyNot(side, box);
  if (why !== null) return { ok: false, why };
  const edit = change(storeyId, fixture, (found) => {
    found.outline = boxAlong(side, box);
    putCertainty(found, 'outline', null);
  });
  return { ok: true, edit };
}

/** Says how high a fixture begins or ends, mm above the floor; null: not known. */
export const setFixtureHeight = (
  storeyId: string,
  fixture: Pick<Fixture, 'id' | 'kind'>,
  fact: 'fromMm' | 'toMm',
  mm: number | null,
): JobEdit =>
  change(storeyId, fixture, (found) => {
    if (mm === null) delete found[fact];
    else found[fact] = mm;
    putCertainty(found, fact, null);
  });

/** Takes a fixture away. */
export const removeFixture = (storeyId: string, { id, kind }: Pick<Fixture, 'id' | 'kind'>): JobEdit => ({
  label: `Remove a ${fixtureWords[kind].toLowerCase()}`,
  change: ({ storeys }) => {
    const storey = storeys.find((one) => one.id === storeyId);
    if (storey !== undefined) storey.fixtures = storey.fixtures.filter((one) => one.id !== id);
  },
});

import type { BackBox } from '#engine/connections/things.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import type { WallSpot } from '#engine/plan/plane.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import { metres } from '#engine/quotation/said.ts';
import { cutWords } from '#engine/ways/cut-words.ts';
import type { Run } from '#engine/ways/run.ts';
import { drilledWalls } from '#engine/work/drilled-walls.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import type { References } from '#engine/work/references.ts';
import type { Point } from '#model/installation.ts';
import { findingMark, outcomeInk, outcomeWords } from '../../marks.ts';
import { pointKindWords } from '../../point-kind-words.ts';
import type { Shape } from '../../scene.ts';
import { jointKindWords, liesWords } from '../../work/connection-card.ts';
import type { NumberedFinding } from '../finding-marks.ts';
import { wayInWords } from '../way-words.ts';
import { type Block, gap, type Section, textBlocks, withSign } from './column.ts';
import { listed } from './entries.ts';
import { foundCableSection } from './found-cables.ts';
import { heightSaid } from './height-said.ts';
import { LETTERS_MM } from './lettering.ts';
import { goesUp, type Upright, uprightsOf } from './uprights.ts';

/** What the lists of a storey are made from. */
export interface ListContent {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly references: References;
  /** Ids of the points that something is done to. */
  readonly workedOn: ReadonlySet<string>;
  /** New cables that show on the storey. */
  readonly runs: readonly Run[];
  readonly marks: readonly NumberedFinding[];
  readonly adviceCount: number;
  readonly cautions: readonly string[];
  /** What found no room on the plan, as it would have been marked. */
  readonly unmarked: readonly string[];
}

/** The rises and drops of a cable in its order, each height above the floor of its storey; the storey is named where it is another. */
function uprightsSaid({ worked, storeyId }: ListContent, run: Run): string {
  const height = ({ heightMm, storeyId: storey }: Upright['from']): string =>
    storey === storeyId
      ? heightSaid(heightMm)
      : `${heightSaid(heightMm)} (${worked.plan.storeyById.get(storey)?.storey.name ?? 'another storey'})`;
  const said = uprightsOf(run).map(
    (upright) => `${goesUp(upright) ? 'up' : 'down'} ${height(upright.from)} to ${height(upright.to)}`,
  );
  return said.length === 0 ? '' : `h ${said.join('; ')}`;
}

/** New cables: number, ends, length, what it is and lies in, what is cut for it. */
function cableSection(content: ListContent): Section | null {
  const { worked, runs, references } = content;
  return listed(
    'New cables',
    runs.map((run) => {
      const length = run.lengthMm === null ? 'length not known' : metres(run.lengthMm);
      const ends = `${references.place(run.from.nodeId)} to ${references.place(run.to.nodeId)}`;
      const cuts = run.cuts.map((cut) => cutWords(worked.plan, cut, run.cable).replace(/^, /, ''));
      const told = [...new Set(cuts)].filter((cut) => cut !== '');
      return {
        head: `${references.cable(run.id)}: ${ends}, ${length}`,
        rows: [wayInWords(run), uprightsSaid(content, run), told.join('; ')],
      };
    }),
  );
}

const actionWords: Readonly<Record<BackBox['action'], string>> = {
  fit: 'new box',
  keep: '',
  're-box': 'box exchanged for one of',
  frame: 'spacer frame on the box, then',
  unknown: 'box: depth not known, see first',
};

function boxSaid(box: BackBox | undefined): string {
  if (box === undefined || box.action === 'keep') return '';
  return box.action === 'unknown' ? actionWords.unknown : `${actionWords[box.action]} ${box.depthMm} mm`;
}

const statusWords: Readonly<Record<Point['status'], string>> = {
  existing: 'found',
  wanted: 'new',
  replaced: 'taken out, another comes here',
  removed: 'taken out',
};

const cornersSaid = (worked: Worked, id: string): string =>
  cornersAt(worked, worked.plan.positionOfPoint.get(id)?.onWall);

function cornersAt(worked: Worked, spot: WallSpot | undefined): string {
  if (spot === undefined) return '';
  const { leftMm, rightMm } = cornerDistances(worked.plan, spot);
  return [
    leftMm === null ? '' : `${Math.round(leftMm)} from the left-hand corner`,
    rightMm === null ? '' : `${Math.round(rightMm)} from the right-hand corner`,
  ]
    .filter((said) => said !== '')
    .join(', ');
}

/** Points that something is done to, as they are marked out: height, both corners, box. */
function pointSection({ worked, storeyId, workedOn }: ListContent): Section | null {
  return listed(
    'Points worked on (corners as one faces the wall)',
    worked.job.points.flatMap((point) => {
      const position = worked.plan.positionOfPoint.get(point.id);
      if (position === undefined || position.storeyId !== storeyId || !workedOn.has(point.id)) return [];
      const room = roomOfPosition(worked.plan, position)?.room.name;
      const box = worked.things.boxes.find(({ id }) => id === point.id);
      const where = [`h ${Math.round(position.heightMm)}`, cornersSaid(worked, point.id)];
      return [
        {
          head: `${point.label}: ${pointKindWords[point.kind]}${room === undefined ? '' : `, ${room}`}`,
          rows: [
            [statusWords[point.status], ...where, boxSaid(box)].filter((said) => said !== '').join('; '),
          ],
        },
      ];
    }),
  );
}

const accessWords = (accessible: boolean | null): string =>
  accessible === null ? 'access not known' : accessible ? 'accessible' : 'not accessible';

/** Joints and fused units that the scheme brings along, by their marks. */
function jointSection(
  { worked, storeyId, references }: ListContent,
  shown: ReadonlySet<string>,
): Section | null {
  const joints = worked.things.joints
    .filter(({ id }) => shown.has(id))
    .map(({ id, kind, ratingA, lies, accessible, position }) => {
      const room = roomOfPosition(worked.plan, position)?.room.name;
      return {
        head: `${references.place(id)}: ${jointKindWords[kind]}, ${ratingA} A`,
        rows: [
          [
            liesWords[lies],
            position === null ? '' : `h ${heightSaid(position.heightMm)}`,
            room ?? '',
            accessWords(accessible),
          ]
            .filter((said) => said !== '')
            .join(', '),
        ],
      };
    });
  const units = worked.things.fusedUnits
    .filter(
      ({ id, pointId, position }) => pointId === null && position?.storeyId === storeyId && shown.has(id),
    )
    .map(({ id, fuseA, position }) => ({
      head: `${references.place(id)}: fused connection unit`,
      rows: [
        [
          `h ${Math.round(position?.heightMm ?? 0)}`,
          cornersAt(worked, position?.onWall),
          fuseA === null ? 'fuse not known' : `${fuseA} A fuse`,
        ]
          .filter((said) => said !== '')
          .join('; '),
      ],
    }));
  return listed('Joints and units', [...joints, ...units]);
}

/** Where floors come up, joists are cut and walls are drilled, room by room, by the numbers that the list of them has. */
function floorSection({ worked, storeyId }: ListContent): Section | null {
  const work = floorPlaces(worked);
  const rooms = new Map<string, Record<'boards' | 'joists' | 'walls', string[]>>();
  const enter = (kind: 'boards' | 'joists' | 'walls', name: string | undefined, words: string): void => {
    const head = name ?? 'Between rooms';
    const room = rooms.get(head) ?? { boards: [], joists: [], walls: [] };
    room[kind].push(words);
    rooms.set(head, room);
  };
  for (const kind of ['boards', 'joists'] as const)
    for (const { storeyId: storey, tape, mark, cables } of work[kind]) {
      if (storey === storeyId) enter(kind, tape?.roomName, `${mark} for ${cables.join(', ')}`);
    }
  for (const { storeyId: storey, faces, mark, cables } of drilledWalls(worked))
    if (storey === storeyId)
      enter('walls', faces[0].roomName ?? undefined, `${mark} for ${cables.join(', ')}`);
  const has = (kind: 'boards' | 'joists' | 'walls'): boolean =>
    [...rooms.values()].some((room) => room[kind].length > 0);
  const title = [
    has('boards') ? 'floors opened' : '',
    has('joists') ? 'joists cut' : '',
    has('walls') ? 'walls drilled' : '',
  ]
    .filter((words) => words !== '')
    .join(', ');
  return listed(
    title.charAt(0).toUpperCase() + title.slice(1),
    [...rooms].map(([head, { boards, joists, walls }]) => ({
      head,
      rows: [
        boards.length === 0 ? '' : `Opened: ${boards.join('; ')}`,
        joists.length === 0 ? '' : `Joists: ${joists.join('; ')}`,
        walls.length === 0 ? '' : `Walls drilled: ${walls.join('; ')}`,
      ],
    })),
  );
}

/** Marks of checks stand at the left of their words. */
const FINDING_INSET_MM = 7;

function findingBlocks({ marks, adviceCount }: ListContent, widthMm: number): readonly Block[] {
  const rows = marks.flatMap((mark) => {
    const text = `${outcomeWords[mark.outcome]}: ${mark.finding.message}`;
    const [first, ...rest] = textBlocks(text, widthMm, {
      ink: outcomeInk(mark.outcome),
      insetMm: FINDING_INSET_MM,
    });
    const sign = ([x, y]: SheetPoint): readonly Shape[] =>
      findingMark(mark.outcome, sheetPoint(x + 2.8, y + 2.6), mark.label, LETTERS_MM.notes);
    return first === undefined ? [] : [withSign(first, sign), ...rest, gap(rest.length === 0 ? 2.8 : 1)];
  });
  const none =
    marks.length > 0 ? [] : textBlocks('None that fails, wants a decision or is not proven.', widthMm);
  const advice =
    adviceCount === 0
      ? []
      : textBlocks(`And ${adviceCount} of advice: in the workbook, and on screen under Checks.`, widthMm, {
          ink: 'text-soft',
        });
  return [gap(0.8), ...rows, ...none, ...advice];
}

/** Marks that the plan has no room for, so that nobody takes what is not there for not being there. */
const unmarkedSection = ({ unmarked }: ListContent): Section | null =>
  unmarked.length === 0
    ? null
    : {
        title: 'Not marked for want of room',
        blocks: (widthMm) => textBlocks(`${unmarked.join('; ')}.`, widthMm),
      };

const cautionSection = ({ cautions }: ListContent): Section => ({
  title: 'Cautions',
  blocks: (widthMm) => cautions.flatMap((caution) => [...textBlocks(caution, widthMm), gap(0.6)]),
});

/** The lists of a storey’s sheet as they are read, those that are empty left out. */
export interface StoreyLists {
  /** Never away from the plan if it can be helped. */
  readonly cautions: Section;
  /** In order. */
  readonly others: readonly Section[];
}

/**
 * All lists of a storey.
 *
 * @param shown ids of the joints and units that are drawn on the sheet.
 */
export function storeyLists(content: ListContent, shown: ReadonlySet<string>): StoreyLists {
  const others = [
    unmarkedSection(content),
    pointSection(content),
    cableSection(content),
    foundCableSection(content.worked, content.storeyId, content.references),
    jointSection(content, shown),
    floorSection(content),
    {
      title: 'Findings to see to',
      blocks: (widthMm: number): readonly Block[] => findingBlocks(content, widthMm),
    },
  ];
  return { cautions: cautionSection(content), others: others.filter((section) => section !== null) };
}

import type { Content, Node } from 'pdfmake/interfaces.js';
import { type Closeness, HEAD_OF_TABLE, type Setting, setAs } from './closer.ts';
import { layOut, MARGIN_MM } from './pdf-page.ts';
import { mm } from './pdf-parts.ts';

/** A part that ends with a page less full than this is set closer, where that saves the page. */
const FULL_ENOUGH = 1 / 2;

/** From as it is to the closest: letters keep their size, and a row to write in stays 6 mm high. */
const steps: readonly Closeness[] = [
  { spaces: 0.75, lineHeight: 1.08 },
  { spaces: 0.5, lineHeight: 1.02 },
];

type Part = readonly Content[];

/** How a part comes out as it is set. */
interface Outcome {
  readonly setting: Setting;
  readonly pages: number;
  /** Share of its last page that it takes. */
  readonly full: number;
}

const END = 'end-of-part';
/** Stands after a part while it is measured, next to no height; not in what is printed. */
const endMark = (): Content => ({ text: ' ', id: END, fontSize: 0.1, lineHeight: 1 });

/** Everything of a part as it comes to stand, and where it ends; what a list of contents takes from other parts comes after it. */
async function placedOf(part: Part, setting: Setting, others: readonly Part[]): Promise<readonly Node[]> {
  const placed: Node[] = [];
  const listed = others.flatMap((other) => setAs(other.slice(0, 1), asItIs));
  await layOut({
    content: [...setAs(part, setting), endMark(), ...listed],
    // Laid out whole, drawn no further than it has to be.
    maxPagesNumber: 1,
    pageBreakBefore: (node) => {
      placed.push(node);
      return false;
    },
  }).getStream();
  return placed.slice(0, placed.findIndex(({ id }) => id === END) + 1);
}

const asItIs: Setting = { closeness: null, breaksBefore: new Set() };

const pageOf = (node: Node | undefined): number => node?.startPosition.pageNumber ?? 0;

/** Of a table's heads and first row: what has less room goes to the next page. */
const BEGINNING_PT = 56;
const PAGE_FOOT_PT = 841.89 - mm(MARGIN_MM);

/**
 * The first head that stands on another page than the table after it; null: none. What does not fit on a page is placed where it would
 * have stood there, so that a table that would begin in its last lines goes to the next.
 */
function firstStranded(placed: readonly Node[], moved: ReadonlySet<number>): number | null {
  const heads = placed.flatMap((node, at) => (node.headlineLevel === HEAD_OF_TABLE ? [{ node, at }] : []));
  const found = heads.findIndex(({ node, at }, i) => {
    if (moved.has(i)) return false;
    const table = placed.slice(at + 1).find((next) => next.table !== undefined);
    if (table === undefined) return false;
    return pageOf(table) !== pageOf(node) || table.startPosition.top + BEGINNING_PT > PAGE_FOOT_PT;
  });
  return found === -1 ? null : found;
}

/** So many heads of a part at most are moved to the next page. */
const MOST_MOVED = 8;

/** A part at one closeness, its heads with their tables. */
async function outcomeOf(part: Part, closeness: Closeness | null, others: readonly Part[]): Promise<Outcome> {
  const breaksBefore = new Set<number>();
  for (;;) {
    const setting = { closeness, breaksBefore };
    const placed = await placedOf(part, setting, others);
    const stranded = firstStranded(placed, breaksBefore);
    if (stranded === null || breaksBefore.size === MOST_MOVED) {
      const end = placed.at(-1);
      return {
        setting,
        pages: pageOf(end) - pageOf(placed[0]) + 1,
        full: end?.startPosition.verticalRatio ?? 1,
      };
    }
    breaksBefore.add(stranded);
  }
}

const isSparse = ({ pages, full }: Outcome): boolean => pages > 1 && full < FULL_ENOUGH;

/** As it is, or closer where a page that would be nearly empty is saved so. */
async function settingOf(part: Part, others: readonly Part[]): Promise<Setting> {
  let best = await outcomeOf(part, null, others);
  for (const step of steps) {
    if (!isSparse(best)) break;
    const closer = await outcomeOf(part, step, others);
    if (closer.pages < best.pages) best = closer;
  }
  return best.setting;
}

/**
 * Parts that each begin a page, as one content. Heads that go along with a table do so, and a part that would end with a page less than
 * half full is set closer where the page is saved so; where it is not, it stays as it is. Equal parts give equal content.
 *
 * @param parts every one but the first breaks the page before it.
 */
export async function fitParts(parts: readonly Part[]): Promise<readonly Content[]> {
  const fitted: Content[] = [];
  for (const [i, part] of parts.entries()) {
    const others = parts.filter((_, at) => at !== i);
    fitted.push(...setAs(part, await settingOf(part, others)));
  }
  return fitted;
}

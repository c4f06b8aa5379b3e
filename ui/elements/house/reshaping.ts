import { produce } from 'immer';
import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import { reshapeHouse } from '../../edits/house.ts';
import { type HousePart, isPartThere, keyOfPart, partOfKey, partWords } from '../../house/house-parts.ts';
import { lengthTyped, partLengths } from '../../house/part-lengths.ts';
import { partAfter, type Reshape } from '../../house/reshape.ts';
import { faceOfWall, firstFace, otherFace, withMark } from '../../house/stretch-marks.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { PlanAnswer } from '../../plan-asks.ts';

/** Has walls, corners and fixtures of the shown storey moved on the plan: which is in hand, what came of the last movement. */
export class Reshaping {
  readonly #host: ToolHost;
  readonly #view: () => JobView;
  readonly #hold: ToolHold<'reshape'>;
  #part: string | null = null;
  #said = '';
  /** Steps by keys of one part in hand are one step back. */
  #spell = 0;

  constructor(host: ToolHost, view: () => JobView) {
    this.#host = host;
    this.#view = view;
    this.#hold = new ToolHold(host, 'reshape', { answered: (answer) => this.#answered(answer) });
  }

  get isOn(): boolean {
    return this.#hold.isHeld;
  }

  /** Begins, or ends. */
  toggle(): void {
    if (this.isOn) {
      this.#hold.letGo();
      return;
    }
    this.#part = null;
    this.#say('');
  }

  /** Begins with a part in hand. */
  begin(part: HousePart): void {
    this.#part = null;
    this.#pick(keyOfPart(part));
  }

  /** The job or the storey is another than before: what is said of the part in hand goes by it. */
  follow(): void {
    if (!this.isOn) return;
    const [part, storey] = [this.#held, this.#storey];
    if (part === null || storey === undefined || !isPartThere(storey, part)) this.#part = null;
    this.#say(this.#said);
  }

  get #storey() {
    const { job, storeyId } = this.#view();
    return job.storeys.find(({ id }) => id === storeyId);
  }

  get #held(): HousePart | null {
    return this.#part === null ? null : partOfKey(this.#part);
  }

  #say(said: string): void {
    this.#said = said;
    const [storey, part] = [this.#storey, this.#held];
    const isKnown = storey !== undefined && part !== null;
    const lengths = isKnown ? partLengths(storey, part) : [];
    const other = isKnown && part.part === 'stretch' ? otherFace(storey, part) : null;
    const behind = storey === undefined || other === null ? null : faceOfWall(storey, other).room;
    this.#hold.ask({ tool: 'reshape', part: this.#part, said, lengths, behind });
  }

  #answered(answer: PlanAnswer): void {
    if (answer.do === 'pick') this.#pick(answer.subjectId);
    if (answer.do === 'reshape') this.#reshape(answer.asked, answer.byKeys);
    if (answer.do === 'length') this.#typed(answer.id, answer.mm);
    if (answer.do === 'part-of-wall') this.#markWall();
    if (answer.do === 'other-side') this.#turnRound();
    if (answer.do === 'mark') this.#mark(answer.alongMm);
  }

  #pick(key: string): void {
    const [storey, part] = [this.#storey, partOfKey(key)];
    if (key !== this.#part) this.#spell += 1;
    this.#part = key;
    const words = storey === undefined || part === null ? '' : partWords(storey, part);
    const begun = `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
    this.#say(part?.part === 'stretch' ? `Part of ${words}` : begun);
  }

  /** A part of the wall in hand is to be marked. */
  #markWall(): void {
    const [storey, part] = [this.#storey, this.#held];
    if (storey === undefined || part?.part !== 'wall') return;
    this.#pick(keyOfPart({ part: 'stretch', ...firstFace(storey, part.wallId), marks: [] }));
  }

  /** The same marks, told from the room on the other side. */
  #turnRound(): void {
    const [storey, part] = [this.#storey, this.#held];
    const other = storey !== undefined && part?.part === 'stretch' ? otherFace(storey, part) : null;
    if (other !== null && part?.part === 'stretch') this.#pick(keyOfPart({ ...part, ...other }));
  }

  #mark(alongMm: number): void {
    const part = this.#held;
    if (part?.part !== 'stretch') return;
    this.#pick(keyOfPart({ ...part, marks: withMark(part.marks, alongMm) }));
  }

  #typed(id: string, mm: number): void {
    const [storey, part] = [this.#storey, this.#held];
    if (storey === undefined || part === null) return;
    const typed = lengthTyped(storey, part, { id, mm });
    if (typed.do === 'nothing') this.#say(typed.why);
    else if (typed.do === 'part') this.#pick(keyOfPart(typed.part));
    else this.#reshape(typed.asked, false);
  }

  #reshape(asked: Reshape, byKeys: boolean): void {
    const [{ job, storeyId }, storey] = [this.#view(), this.#storey];
    if (!byKeys) this.#spell += 1;
    const made = reshapeHouse(job, storeyId, asked, byKeys ? `reshape-${this.#spell}` : undefined);
    if (!made.ok || storey === undefined) {
      const why = made.ok ? '' : made.why;
      this.#say(`It cannot go there: ${why.charAt(0).toLowerCase()}${why.slice(1)}`);
      return;
    }
    const after = produce(job, (draft) => made.edit.change(draft)).storeys.find(({ id }) => id === storeyId);
    this.#part = keyOfPart(partAfter(asked, storey, after ?? storey));
    this.#say(movedWords[asked.part]);
    send(this.#host, 'job-edit', made.edit);
  }
}

const movedWords: Readonly<Record<Reshape['part'], string>> = {
  wall: 'The wall has moved',
  stretch: 'The part of the wall has moved',
  corner: 'The corner has moved',
  fixture: 'It has moved',
};

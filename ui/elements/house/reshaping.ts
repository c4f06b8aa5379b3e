import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import { reshapeHouse } from '../../edits/house.ts';
import { keyOfPart, partOfKey, partWords } from '../../house/house-parts.ts';
import { partAfter, type Reshape } from '../../house/reshape.ts';
import { wallDepths } from '../../house/wall-depths.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { PlanAnswer } from '../../plan-asks.ts';

/** Has walls and corners of the shown storey moved on the plan: which is in hand, what came of the last movement. */
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

  /** The job or the storey is another than before: what is said of the part in hand goes by it. */
  follow(): void {
    if (!this.isOn) return;
    const part = this.#part === null ? null : partOfKey(this.#part);
    const storey = this.#storey;
    const isThere =
      part !== null &&
      storey?.walls.some(({ id, from, to }) =>
        part.part === 'wall'
          ? id === part.wallId
          : [from, to].some((end) => end[0] === part.at[0] && end[1] === part.at[1]),
      );
    if (!isThere) this.#part = null;
    this.#say(this.#said);
  }

  get #storey() {
    const { job, storeyId } = this.#view();
    return job.storeys.find(({ id }) => id === storeyId);
  }

  #say(said: string): void {
    this.#said = said;
    const [storey, part] = [this.#storey, this.#part === null ? null : partOfKey(this.#part)];
    const depths = storey !== undefined && part?.part === 'wall' ? wallDepths(storey, part.wallId) : [];
    this.#hold.ask({ tool: 'reshape', part: this.#part, said, depths });
  }

  #answered(answer: PlanAnswer): void {
    if (answer.do === 'pick') this.#pick(answer.subjectId);
    if (answer.do === 'reshape') this.#reshape(answer.asked, answer.byKeys);
  }

  #pick(key: string): void {
    const [storey, part] = [this.#storey, partOfKey(key)];
    if (key !== this.#part) this.#spell += 1;
    this.#part = key;
    const words = storey === undefined || part === null ? '' : partWords(storey, part);
    this.#say(`${words.charAt(0).toUpperCase()}${words.slice(1)}`);
  }

  #reshape(asked: Reshape, byKeys: boolean): void {
    const { job, storeyId } = this.#view();
    if (!byKeys) this.#spell += 1;
    const made = reshapeHouse(job, storeyId, asked, byKeys ? `reshape-${this.#spell}` : undefined);
    if (!made.ok) {
      this.#say(`It cannot go there: ${made.why.charAt(0).toLowerCase()}${made.why.slice(1)}`);
      return;
    }
    this.#part = keyOfPart(partAfter(asked));
    this.#say(asked.part === 'wall' ? 'The wall has moved' : 'The corner has moved');
    send(this.#host, 'job-edit', made.edit);
  }
}

import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import type { Vector } from '../../house/vector.ts';
import type { PlanAnswer } from '../../plan-asks.ts';

/** What places are tapped for. */
export interface SpotsWanted {
  /** What is to be tapped next, by how many there are. */
  readonly hint: (count: number) => string;
  /** True where the last leads back to the first. */
  readonly closes: boolean;
  /** How many end it by themselves; null where whoever taps says so. */
  readonly enough: number | null;
  /** How many there must be, and the words that end it then. */
  readonly done: { readonly least: number; readonly words: string } | null;
  readonly took: (spots: readonly Vector[]) => void;
}

/** Has places tapped on the plan until there are enough of them. */
export class SpotsTapping {
  readonly #hold: ToolHold<'spots'>;
  #wanted: SpotsWanted | null = null;
  #spots: readonly Vector[] = [];

  constructor(host: ToolHost) {
    this.#hold = new ToolHold(host, 'spots', {
      answered: (answer) => this.#answered(answer),
      ended: () => {
        this.#spots = [];
        this.#wanted = null;
      },
    });
  }

  /** True while places are tapped. */
  get isOn(): boolean {
    return this.#hold.isHeld;
  }

  begin(wanted: SpotsWanted): void {
    this.#hold.letGo();
    this.#wanted = wanted;
    this.#spots = [];
    this.#ask(wanted);
  }

  letGo(): void {
    this.#hold.letGo();
  }

  #ask({ hint, closes, done }: SpotsWanted): void {
    const count = this.#spots.length;
    this.#hold.ask({
      tool: 'spots',
      spots: this.#spots,
      closes,
      hint: hint(count),
      said: hint(count),
      done: done !== null && count >= done.least ? done.words : null,
    });
  }

  #answered(answer: PlanAnswer): void {
    const wanted = this.#wanted;
    if (wanted === null) return;
    if (answer.do === 'done') {
      this.#end(wanted);
      return;
    }
    if (answer.do === 'take-back') this.#spots = this.#spots.slice(0, -1);
    else if (answer.do === 'spot') this.#spots = [...this.#spots, answer.at];
    else return;
    if (this.#spots.length === wanted.enough) this.#end(wanted);
    else this.#ask(wanted);
  }

  #end(wanted: SpotsWanted): void {
    const spots = this.#spots;
    this.#hold.letGo();
    wanted.took(spots);
  }
}

/** A binary heap of nodes by weight; of two equal weights the lower node comes first. Nodes may be in it more than once. */
export class NodeHeap {
  readonly #weights: number[] = [];
  readonly #nodes: number[] = [];

  get size(): number {
    return this.#nodes.length;
  }

  /** Takes all nodes out. */
  clear(): void {
    this.#weights.length = 0;
    this.#nodes.length = 0;
  }

  push(node: number, weight: number): void {
    const [weights, nodes] = [this.#weights, this.#nodes];
    let at = nodes.length;
    nodes.push(node);
    weights.push(weight);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!this.#before(weight, node, up)) break;
      weights[at] = weights[up] as number;
      nodes[at] = nodes[up] as number;
      at = up;
    }
    weights[at] = weight;
    nodes[at] = node;
  }

  /** The weight of the next node; Infinity when there is none. */
  get nextWeight(): number {
    return this.#weights[0] ?? Number.POSITIVE_INFINITY;
  }

  /** Takes the next node out; −1 when there is none. */
  pop(): number {
    const [weights, nodes] = [this.#weights, this.#nodes];
    const first = nodes[0];
    const [weight, node] = [weights.pop(), nodes.pop()];
    if (first === undefined || weight === undefined || node === undefined) return -1;
    if (nodes.length > 0) this.#sink(weight, node);
    return first;
  }

  #sink(weight: number, node: number): void {
    const [weights, nodes] = [this.#weights, this.#nodes];
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= nodes.length) break;
      if (
        down + 1 < nodes.length &&
        this.#before(weights[down + 1] as number, nodes[down + 1] as number, down)
      )
        down += 1;
      if (this.#before(weight, node, down)) break;
      weights[at] = weights[down] as number;
      nodes[at] = nodes[down] as number;
      at = down;
    }
    weights[at] = weight;
    nodes[at] = node;
  }

  #before(weight: number, node: number, at: number): boolean {
    const other = this.#weights[at] as number;
    return weight < other || (weight === other && node < (this.#nodes[at] as number));
  }
}

/** As much of an event of the browser's own tracing as is read here; times in microseconds. */
export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** By the clock: when it began. */
  readonly ts: number;
  /** What the thread had worked when it began, and what it worked in the event; absent where the thread was not asked. */
  readonly tts?: number;
  readonly tdur?: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

/** What one movement of the hand took of the page's main thread, from the pointer's event to the commit of what it changed, ms. */
export interface FrameWork {
  readonly wholeMs: number;
  /** The parts of it, in the order that a frame is made in; the rest is what lies between them. */
  readonly scriptMs: number;
  readonly styleMs: number;
  readonly layoutMs: number;
  readonly paintMs: number;
  readonly commitMs: number;
}

const partOf: Readonly<Record<string, Exclude<keyof FrameWork, 'wholeMs'>>> = {
  EventDispatch: 'scriptMs',
  FunctionCall: 'scriptMs',
  RunMicrotasks: 'scriptMs',
  TimerFire: 'scriptMs',
  FireAnimationFrame: 'scriptMs',
  UpdateLayoutTree: 'styleMs',
  Layout: 'layoutMs',
  PrePaint: 'paintMs',
  Paint: 'paintMs',
  Layerize: 'paintMs',
  Commit: 'commitMs',
};

/** An event of the main thread with its span of the thread's own time, µs. */
interface Span {
  readonly event: TraceEvent;
  readonly from: number;
  readonly to: number;
}

function spansOf(events: readonly TraceEvent[]): readonly Span[] {
  return events
    .flatMap((event): Span[] => {
      const { ph, tts, tdur } = event;
      return ph !== 'X' || tts === undefined || tdur === undefined
        ? []
        : [{ event, from: tts, to: tts + tdur }];
    })
    .toSorted((a, b) => a.from - b.from || b.to - a.to);
}

/**
 * The work of each movement of the pointer in a trace, in their order: the time that the thread itself worked, so that what else the
 * machine does counts in none. A movement that no commit follows before the next one has none.
 *
 * @param events of one page, as `Tracing` of the browser gives them: of the thread with the most movements only its own are read.
 */
export function pointerWork(events: readonly TraceEvent[]): readonly FrameWork[] {
  const isMove = ({ name, args }: TraceEvent): boolean =>
    name === 'EventDispatch' && args?.data?.type === 'pointermove';
  const thread = busiest(events.filter(isMove));
  if (thread === null) return [];
  const spans = spansOf(events.filter(({ pid, tid }) => pid === thread.pid && tid === thread.tid));
  const moves = spans.filter(({ event }) => isMove(event));
  return moves.flatMap((move, index) => {
    const next = moves[index + 1]?.from ?? Number.POSITIVE_INFINITY;
    const commit = spans.find(({ event, from }) => event.name === 'Commit' && from >= move.to && from < next);
    return commit === undefined ? [] : [workBetween(spans, move.from, commit.to)];
  });
}

function busiest(moves: readonly TraceEvent[]): Pick<TraceEvent, 'pid' | 'tid'> | null {
  const counts = new Map<string, { readonly of: TraceEvent; count: number }>();
  for (const of of moves) {
    const key = `${of.pid} ${of.tid}`;
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { of, count: 1 });
    else known.count += 1;
  }
  return [...counts.values()].toSorted((a, b) => b.count - a.count)[0]?.of ?? null;
}

/** What lies within another part belongs to the outer one: style that a script asked for is the script's. */
function workBetween(spans: readonly Span[], from: number, to: number): FrameWork {
  const parts = { scriptMs: 0, styleMs: 0, layoutMs: 0, paintMs: 0, commitMs: 0 };
  let until = from;
  for (const span of spans) {
    const part = partOf[span.event.name];
    if (part === undefined || span.from < until || span.to > to) continue;
    parts[part] += (span.to - span.from) / 1e3;
    until = span.to;
  }
  return { wholeMs: (to - from) / 1e3, ...parts };
}

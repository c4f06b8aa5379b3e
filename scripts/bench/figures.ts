/** What a figure is held to. */
export interface Goal {
  readonly name: FigureName;
  readonly words: string;
  /** What it is at the most, or at the least. */
  readonly most?: number;
  readonly least?: number;
}

/** Every figure of the benchmark, as its object has it, in order. */
export const figureNames = [
  'estimateGrowthExponent',
  'networkSolveVsNgspice',
  'searchVsHighs',
  'searchVsHighsTen',
  'buyVsHighs',
  'workbookVsRawExceljs',
  'httpEstimateAddedMs',
  'httpJobVsBareHono',
  'dragWorkMsP95',
  'firstLoadKBGzip',
  'coldStartMs',
  'batchJobsPerSecondPerCore',
  'peakMemoryMB',
] as const;
export type FigureName = (typeof figureNames)[number];

/** Null: what is compared does not come to the same. */
export type Figures = Readonly<Partial<Record<FigureName, number | null>>>;

export const goals: readonly Goal[] = [
  {
    name: 'estimateGrowthExponent',
    words: 'e in time ~ rooms^e of a whole estimate, 5, 10, 20 and 40 rooms, four wanted points',
    most: 1.3,
  },
  {
    name: 'networkSolveVsNgspice',
    words: 'load flow, times as fast as ngspice on the same circuits',
    least: 100,
  },
  {
    name: 'searchVsHighs',
    words: 'search at six points, times as fast as HiGHS on the same columns',
    least: 20,
  },
  { name: 'searchVsHighsTen', words: 'the same at ten points', least: 100 },
  { name: 'buyVsHighs', words: 'cutting and buying, times as fast as HiGHS on the same lists', least: 20 },
  {
    name: 'workbookVsRawExceljs',
    words: 'workbook, times as long as writing the same cells plainly',
    most: 1.3,
  },
  {
    name: 'httpEstimateAddedMs',
    words: 'a posted estimate, longer than read, estimated and written in process by, ms',
    most: 2,
  },
  { name: 'httpJobVsBareHono', words: 'reads of a stored job, as a part of bare Hono’s', least: 0.35 },
  {
    name: 'dragWorkMsP95',
    words: 'work of a movement in the browser, 95th percentile of the worst case, ms',
    most: 12,
  },
  { name: 'firstLoadKBGzip', words: 'script and style of the first page, kB compressed', most: 150 },
  { name: 'coldStartMs', words: 'server started to first answer, ms', most: 1500 },
  { name: 'batchJobsPerSecondPerCore', words: 'jobs of a batch a second and core', least: 200 },
  { name: 'peakMemoryMB', words: 'memory of that batch with two workers at its most, MB', most: 512 },
];

/** Whether a figure keeps its goal; null of one that is not there. */
export function isKept({ most, least }: Goal, value: number | null | undefined): boolean | null {
  if (value === null || value === undefined) return null;
  return value <= (most ?? Number.POSITIVE_INFINITY) && value >= (least ?? Number.NEGATIVE_INFINITY);
}

const told = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);

/** The figures for people, each beside its goal. */
export function figureTable(figures: Figures): string {
  const rows = goals
    .filter(({ name }) => name in figures)
    .map((goal) => {
      const value = figures[goal.name];
      const kept = isKept(goal, value);
      const bound = goal.most === undefined ? `≥ ${goal.least}` : `≤ ${goal.most}`;
      const verdict = kept === null ? 'none' : kept ? 'kept' : 'NOT KEPT';
      const shown = value === null || value === undefined ? '–' : told(value);
      return `${goal.name.padEnd(28)}${shown.padStart(10)}  ${bound.padEnd(8)}${verdict.padEnd(10)}${goal.words}`;
    });
  return `${rows.join('\n')}\n`;
}

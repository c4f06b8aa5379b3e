/**
 * Who may ask: `anyone`; whoever may `read` the firm's jobs; whoever may `write` them; whoever the firm is their `own`. What
 * an asker is answered with is of their firm alone, whatever the access.
 */
export type Access = 'anyone' | 'read' | 'write' | 'own';

/** The largest job or library that is taken: some hundred times the size of a large one. */
const JOB_BYTES = 8 * 1024 * 1024;
/** The largest file of another program, such as a merchant's price list. */
const SHEET_BYTES = 5 * 1024 * 1024;
/** The largest photo; the screen sends them at a tenth of it. */
const PHOTO_BYTES = 6 * 1024 * 1024;
/** The largest small body. */
const SMALL_BYTES = 16 * 1024;
/** What a request without a body may still send: an empty object and the like. */
const NEXT_TO_NOTHING = 256;

interface RouteEntry {
  readonly method: 'get' | 'post' | 'put' | 'delete';
  readonly path: string;
  readonly access: Access;
  /** Unsafe methods only: whether JSON, a file's bytes or nothing belongs there, and the most bytes that are taken. */
  readonly body?: { readonly kind: 'json' | 'bytes' | 'none'; readonly limitBytes: number };
}

const jobBody = { kind: 'json', limitBytes: JOB_BYTES } as const;
const smallBody = { kind: 'json', limitBytes: SMALL_BYTES } as const;
const sheetBody = { kind: 'bytes', limitBytes: SHEET_BYTES } as const;
const photoBody = { kind: 'bytes', limitBytes: PHOTO_BYTES } as const;
const noBody = { kind: 'none', limitBytes: NEXT_TO_NOTHING } as const;

/** Every route of the server: routes are registered by their entry here, and by nothing else. */
export const routeTable = {
  health: { method: 'get', path: '/api/health', access: 'anyone' },
  ready: { method: 'get', path: '/api/ready', access: 'anyone' },
  openapi: { method: 'get', path: '/api/openapi.json', access: 'anyone' },
  problems: { method: 'get', path: '/api/problems', access: 'anyone' },
  listJobs: { method: 'get', path: '/api/jobs', access: 'read' },
  createJob: { method: 'post', path: '/api/jobs', access: 'write', body: jobBody },
  readJob: { method: 'get', path: '/api/jobs/{id}', access: 'read' },
  saveJob: { method: 'put', path: '/api/jobs/{id}', access: 'write', body: jobBody },
  removeJob: { method: 'delete', path: '/api/jobs/{id}', access: 'write', body: noBody },
  restoreJob: { method: 'post', path: '/api/jobs/{id}/restore', access: 'write', body: noBody },
  listRevisions: { method: 'get', path: '/api/jobs/{id}/revisions', access: 'read' },
  readRevision: { method: 'get', path: '/api/jobs/{id}/revisions/{revision}', access: 'read' },
  keepRevision: {
    method: 'put',
    path: '/api/jobs/{id}/revisions/{revision}/keep',
    access: 'write',
    body: smallBody,
  },
  estimateJob: { method: 'get', path: '/api/jobs/{id}/estimate', access: 'read' },
  // Posted because it carries a job; it reads and keeps nothing.
  estimatePosted: { method: 'post', path: '/api/estimate', access: 'read', body: jobBody },
  // Posted for the same reason.
  readingsPosted: { method: 'post', path: '/api/readings', access: 'read', body: jobBody },
  readLibrary: { method: 'get', path: '/api/library', access: 'read' },
  saveLibrary: { method: 'put', path: '/api/library', access: 'write', body: jobBody },
  exportPriceList: { method: 'get', path: '/api/library/exports/price-list.csv', access: 'read' },
  exportPriceBook: { method: 'get', path: '/api/library/exports/price-list.xlsx', access: 'read' },
  // Posted because it carries a file; it reads and keeps nothing.
  readSheets: { method: 'post', path: '/api/sheets', access: 'read', body: sheetBody },
  catalogue: { method: 'get', path: '/api/catalogue', access: 'read' },
  exportWorkbook: {
    method: 'get',
    path: '/api/jobs/{id}/exports/bill-of-materials.xlsx',
    access: 'read',
  },
  exportBillCsv: { method: 'get', path: '/api/jobs/{id}/exports/bill-of-materials.csv', access: 'read' },
  exportLabourCsv: { method: 'get', path: '/api/jobs/{id}/exports/labour.csv', access: 'read' },
  exportQuotation: { method: 'get', path: '/api/jobs/{id}/exports/quotation.pdf', access: 'read' },
  exportPack: { method: 'get', path: '/api/jobs/{id}/exports/papers.pdf', access: 'read' },
  exportEverything: { method: 'get', path: '/api/jobs/{id}/exports/papers.zip', access: 'read' },
  exportTasks: { method: 'get', path: '/api/jobs/{id}/exports/tasks.pdf', access: 'read' },
  exportConnections: { method: 'get', path: '/api/jobs/{id}/exports/connections.pdf', access: 'read' },
  exportCuts: { method: 'get', path: '/api/jobs/{id}/exports/cuts-and-floors.pdf', access: 'read' },
  exportTests: { method: 'get', path: '/api/jobs/{id}/exports/test-sheet.pdf', access: 'read' },
  exportRecord: { method: 'get', path: '/api/jobs/{id}/exports/record.pdf', access: 'read' },
  exportRecordJson: { method: 'get', path: '/api/jobs/{id}/exports/record.json', access: 'read' },
  exportDangerLetter: {
    method: 'get',
    path: '/api/jobs/{id}/exports/dangerous-condition.pdf',
    access: 'read',
  },
  exportPlan: { method: 'get', path: '/api/jobs/{id}/exports/wiring-plan.svg', access: 'read' },
  exportPlanPdf: { method: 'get', path: '/api/jobs/{id}/exports/wiring-plan.pdf', access: 'read' },
  exportPlanDraft: { method: 'get', path: '/api/jobs/{id}/exports/wiring-plan.dxf', access: 'read' },
  exportShoppingText: { method: 'get', path: '/api/jobs/{id}/exports/shopping.txt', access: 'read' },
  exportShoppingCsv: { method: 'get', path: '/api/jobs/{id}/exports/shopping.csv', access: 'read' },
  exportEstimate: { method: 'get', path: '/api/jobs/{id}/exports/estimate.json', access: 'read' },
  exportJob: { method: 'get', path: '/api/jobs/{id}/exports/job.json', access: 'read' },
  exportArchive: { method: 'get', path: '/api/jobs/{id}/exports/job.zip', access: 'read' },
  listQuotations: { method: 'get', path: '/api/jobs/{id}/quotations', access: 'read' },
  issueQuotation: { method: 'post', path: '/api/jobs/{id}/quotations', access: 'write', body: smallBody },
  readQuotation: { method: 'get', path: '/api/jobs/{id}/quotations/{quotation}', access: 'read' },
  eraseQuotation: {
    method: 'delete',
    path: '/api/jobs/{id}/quotations/{quotation}',
    access: 'own',
    body: noBody,
  },
  forgetCustomer: { method: 'post', path: '/api/jobs/{id}/forget-customer', access: 'own', body: noBody },
  readFrozen: { method: 'get', path: '/api/jobs/{id}/quotations/{quotation}/frozen/{text}', access: 'read' },
  readQuotationPdf: {
    method: 'get',
    path: '/api/jobs/{id}/quotations/{quotation}/quotation.pdf',
    access: 'read',
  },
  readMoved: { method: 'get', path: '/api/jobs/{id}/quotations/{quotation}/moved', access: 'read' },
  noteOnQuotation: {
    method: 'post',
    path: '/api/jobs/{id}/quotations/{quotation}/notes',
    access: 'write',
    body: smallBody,
  },
  offerVariation: {
    method: 'post',
    path: '/api/jobs/{id}/quotations/{quotation}/variations',
    access: 'write',
    body: smallBody,
  },
  readVariationJob: {
    method: 'get',
    path: '/api/jobs/{id}/quotations/{quotation}/variations/{variation}/job',
    access: 'read',
  },
  readVariationPdf: {
    method: 'get',
    path: '/api/jobs/{id}/quotations/{quotation}/variations/{variation}/variation.pdf',
    access: 'read',
  },
  keepPhoto: { method: 'post', path: '/api/assets', access: 'write', body: photoBody },
  sweepPhotos: { method: 'post', path: '/api/photo-sweeps', access: 'own', body: noBody },
  readPhoto: { method: 'get', path: '/api/assets/{asset}', access: 'read' },
  session: { method: 'get', path: '/api/session', access: 'anyone' },
  signIn: { method: 'post', path: '/api/session', access: 'anyone', body: smallBody },
  signOut: { method: 'delete', path: '/api/session', access: 'anyone', body: noBody },
  changePassword: { method: 'put', path: '/api/session/password', access: 'read', body: smallBody },
  // Posted because an address would be written into logs; it only reads.
  lookAtInvitation: { method: 'post', path: '/api/invitation', access: 'anyone', body: smallBody },
  useInvitation: { method: 'post', path: '/api/invitation/use', access: 'anyone', body: smallBody },
  listPeople: { method: 'get', path: '/api/people', access: 'own' },
  invite: { method: 'post', path: '/api/people/invitations', access: 'own', body: smallBody },
  withdrawInvitation: {
    method: 'delete',
    path: '/api/people/invitations/{invitation}',
    access: 'own',
    body: noBody,
  },
  setRole: { method: 'put', path: '/api/people/{person}/role', access: 'own', body: smallBody },
  closeAccount: { method: 'delete', path: '/api/people/{person}', access: 'own', body: noBody },
  inviteToPassword: { method: 'post', path: '/api/people/{person}/password', access: 'own', body: noBody },
  listLinks: { method: 'get', path: '/api/jobs/{id}/quotations/{quotation}/links', access: 'read' },
  makeLink: {
    method: 'post',
    path: '/api/jobs/{id}/quotations/{quotation}/links',
    access: 'write',
    body: smallBody,
  },
  withdrawLink: {
    method: 'delete',
    path: '/api/jobs/{id}/quotations/{quotation}/links/{link}',
    access: 'write',
    body: noBody,
  },
  // Posted so that the link's token stands in no address; both only read.
  sharedQuotation: { method: 'post', path: '/api/shared-quotation', access: 'anyone', body: smallBody },
  sharedQuotationPdf: {
    method: 'post',
    path: '/api/shared-quotation/quotation.pdf',
    access: 'anyone',
    body: smallBody,
  },
  putBackDemos: { method: 'post', path: '/api/demos', access: 'write', body: noBody },
} as const satisfies Readonly<Record<string, RouteEntry>>;

export type RouteName = keyof typeof routeTable;

const entries: readonly RouteEntry[] = Object.values(routeTable);

const patternOf = (path: string): RegExp =>
  new RegExp(`^${path.replaceAll('.', '\\.').replace(/\{\w+\}/g, '[^/]+')}$`);

const patterns = entries.map((entry) => ({ entry, method: entry.method, pattern: patternOf(entry.path) }));

/** The methods that an address takes, in capitals, as the `Allow` header lists them; empty when there is none. */
export function methodsAt(path: string): readonly string[] {
  const methods = patterns
    .filter(({ pattern }) => pattern.test(path))
    .flatMap(({ method }) => (method === 'get' ? ['GET', 'HEAD'] : [method.toUpperCase()]));
  return [...new Set(methods)];
}

/** The entry of the route that takes a request; null when there is none. HEAD is answered as GET is. */
export function routeEntryAt(method: string, path: string): RouteEntry | null {
  const asked = method === 'HEAD' ? 'get' : method.toLowerCase();
  return patterns.find((one) => one.method === asked && one.pattern.test(path))?.entry ?? null;
}

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'oxc-parser';
import { describe, expect, it } from 'vitest';

const root = resolve(fileURLToPath(new URL('..', import.meta.url)));

/** Areas of the code and what each may import: areas (`type:` for types only) and packages (`npm:`). */
const allowed: Readonly<Record<string, readonly string[]>> = {
  data: ['data', 'type:api/model'],
  'api/model': ['api/model', 'npm:zod'],
  'api/engine': ['api/engine', 'data/standards', 'type:api/model'],
  'api/drawing': ['api/drawing', 'api/engine', 'type:api/model'],
  'api/exports': [
    'api/exports',
    'api/archive',
    'api/engine',
    'api/drawing',
    'type:api/model',
    'npm:@tarikjabiri/dxf',
    'npm:exceljs',
    'npm:pdfkit',
    'npm:pdfmake',
    'node:module',
  ],
  'api/imports': ['api/imports', 'api/engine', 'npm:exceljs', 'npm:csv-parse', 'npm:jszip'],
  'api/db': ['api/db', 'api/model', 'npm:drizzle-orm', 'npm:@libsql/client', 'node:*'],
  'api/http': ['api', 'npm:hono', 'npm:@hono/node-server', 'npm:@hono/zod-openapi', 'node:*'],
  // Read and written by the server and on the device alike.
  'api/archive': ['api/archive', 'api/model', 'npm:jszip', 'npm:@noble/hashes'],
  ui: [
    'ui',
    'api/archive',
    'api/engine',
    'api/model',
    'api/drawing',
    'npm:lit',
    'npm:immer',
    'npm:@fontsource',
  ],
  scripts: ['*'],
  tests: ['*'],
};

/** Inside the engine a stage imports itself and the stages before it in the flow of data. */
const stages: Readonly<Record<string, readonly string[]>> = {
  plan: [],
  circuit: ['plan'],
  ways: ['plan', 'circuit'],
  connections: ['plan', 'circuit', 'ways'],
  proof: ['plan', 'circuit', 'ways', 'connections'],
  rules: ['plan', 'circuit', 'ways', 'connections', 'proof'],
  takeoff: ['plan', 'circuit', 'ways', 'connections'],
  labour: ['plan', 'circuit', 'ways', 'connections', 'takeoff'],
  price: ['plan', 'circuit', 'ways', 'connections', 'takeoff', 'labour'],
  survey: ['plan', 'circuit', 'ways', 'connections', 'proof', 'rules'],
  schemes: [
    'plan',
    'circuit',
    'ways',
    'connections',
    'proof',
    'rules',
    'takeoff',
    'labour',
    'price',
    'survey',
  ],
  quotation: [
    'plan',
    'circuit',
    'ways',
    'connections',
    'proof',
    'rules',
    'takeoff',
    'labour',
    'price',
    'schemes',
  ],
  work: [
    'plan',
    'circuit',
    'ways',
    'connections',
    'proof',
    'rules',
    'takeoff',
    'labour',
    'price',
    'survey',
    'schemes',
  ],
};

interface Import {
  readonly from: string;
  readonly target: string;
  readonly typeOnly: boolean;
}

const sourceFiles = (folder: string): string[] =>
  readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();

const files = ['api', 'ui', 'data', 'scripts', 'tests'].flatMap(sourceFiles);
const aliases: Readonly<Record<string, string>> = {
  '#archive/': 'api/archive/',
  '#model/': 'api/model/',
  '#engine/': 'api/engine/',
  '#drawing/': 'api/drawing/',
  '#exports/': 'api/exports/',
  '#imports/': 'api/imports/',
  '#data/': 'data/',
  '#tests/': 'tests/',
};

function resolved(file: string, specifier: string): string {
  for (const [alias, folder] of Object.entries(aliases)) {
    if (specifier.startsWith(alias)) return folder + specifier.slice(alias.length);
  }
  if (specifier.startsWith('.'))
    return relative(root, resolve(root, dirname(file), specifier)).replaceAll('\\', '/');
  if (specifier.startsWith('node:')) return specifier;
  const name = specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
  return `npm:${name}`;
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(root, file), 'utf8');
  const { module, errors } = parseSync(file, text);
  expect(errors, file).toEqual([]);
  const statics = module.staticImports.map((entry) => ({
    from: file,
    target: resolved(file, entry.moduleRequest.value),
    typeOnly: entry.entries.length > 0 && entry.entries.every((one) => one.isType),
  }));
  const exported = module.staticExports.flatMap((statement) =>
    statement.entries
      .filter((entry) => entry.moduleRequest)
      .map((entry) => ({
        from: file,
        target: resolved(file, entry.moduleRequest?.value ?? ''),
        typeOnly: entry.isType,
      })),
  );
  const dynamic = module.dynamicImports.map((entry) => ({
    from: file,
    target: resolved(file, text.slice(entry.moduleRequest.start + 1, entry.moduleRequest.end - 1)),
    typeOnly: false,
  }));
  return [...statics, ...exported, ...dynamic];
}

const imports = files.flatMap(importsOf);
const areaOf = (path: string): string =>
  Object.keys(allowed)
    .filter((area) => path === area || path.startsWith(`${area}/`))
    .sort((a, b) => b.length - a.length)[0] ?? '';

function isAllowed({ from, target, typeOnly }: Import): boolean {
  const rules = allowed[areaOf(from)] ?? [];
  return rules.some((rule) => {
    if (rule === '*') return true;
    if (rule === 'node:*') return target.startsWith('node:');
    if (rule.startsWith('npm:') || rule.startsWith('node:')) return target === rule;
    if (rule.startsWith('type:')) return typeOnly && target.startsWith(`${rule.slice(5)}/`);
    return target.startsWith(`${rule}/`);
  });
}

describe('architecture', () => {
  it('reads every source file and finds imports in them', () => {
    expect(files.length).toBeGreaterThan(60);
    expect(imports.length).toBeGreaterThan(150);
    expect(files.filter((file) => areaOf(file) === '')).toEqual([]);
  });

  it('lets each area import only what it may', () => {
    expect(imports.filter((entry) => !isAllowed(entry))).toEqual([]);
  });

  it('refuses what it is there to refuse', () => {
    const bad = (from: string, target: string, typeOnly = false): boolean =>
      isAllowed({ from, target, typeOnly });
    expect(bad('api/engine/plan/plane.ts', 'npm:zod')).toBe(false);
    expect(bad('api/engine/plan/plane.ts', 'api/model/job.ts')).toBe(false);
    expect(bad('api/engine/plan/plane.ts', 'api/model/job.ts', true)).toBe(true);
    expect(bad('api/engine/estimate.ts', 'data/catalogue/demo-library.ts')).toBe(false);
    expect(bad('api/engine/estimate.ts', 'tests/x.ts')).toBe(false);
    expect(bad('data/catalogue/demo-library.ts', 'api/engine/estimate.ts')).toBe(false);
  });

  it('lets the brute force that the search is held against write everything down without it', () => {
    const own = ['brute-force', 'joinings', 'written-down'].map(
      (name) => `tests/engine/schemes/search/${name}.ts`,
    );
    expect(own.filter((file) => !files.includes(file))).toEqual([]);
    const taken = imports.filter(
      ({ from, target }) => own.includes(from) && target.startsWith('api/engine/schemes/search/'),
    );
    expect(taken).toEqual([]);
  });

  it('lets an engine stage import only itself and the stages before it', () => {
    const stageOf = (path: string): string | null => {
      const [stage, rest] = path.startsWith('api/engine/') ? path.slice('api/engine/'.length).split('/') : [];
      return rest === undefined ? null : (stage ?? null);
    };
    const wrong = imports.filter(({ from, target }) => {
      const here = stageOf(from);
      if (here === null || !target.startsWith('api/engine/')) return false;
      const there = stageOf(target);
      return there === null || (there !== here && !(stages[here] ?? []).includes(there));
    });
    expect(wrong).toEqual([]);
  });

  it('has no cycles between files', () => {
    const next = new Map<string, string[]>();
    for (const { from, target, typeOnly } of imports) {
      if (target.endsWith('.ts') && !typeOnly) next.set(from, [...(next.get(from) ?? []), target]);
    }
    const state = new Map<string, 'open' | 'done'>();
    const cycles: string[] = [];
    const visit = (file: string, trail: readonly string[]): void => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') {
        cycles.push([...trail.slice(trail.indexOf(file)), file].join(' → '));
        return;
      }
      state.set(file, 'open');
      for (const target of next.get(file) ?? []) visit(target, [...trail, file]);
      state.set(file, 'done');
    };
    for (const file of next.keys()) visit(file, []);
    expect(cycles).toEqual([]);
  });

  it('keeps clocks, chance and the outside world out of the engine and the drawings', () => {
    const pure = files.filter((file) => file.startsWith('api/engine/') || file.startsWith('api/drawing/'));
    const forbidden =
      /\bDate\.now\b|\bnew Date\b|\bMath\.random\b|\bcrypto\.|\bperformance\b|\bset(?:Timeout|Interval)\b|\bIntl\b|\.toLocale|\.localeCompare\(|\bconsole\.|\bprocess\.|\bfetch\(|\blocalStorage\b/;
    expect(pure.filter((file) => forbidden.test(readFileSync(join(root, file), 'utf8')))).toEqual([]);
  });

  it('lets nothing import tests or scripts', () => {
    const wrong = imports.filter(
      ({ from, target }) => /^(tests|scripts)\//.test(target) && !/^(tests|scripts)\//.test(from),
    );
    expect(wrong).toEqual([]);
  });

  it('has no rule that imports another rule, and lists and tests each rule', () => {
    const isRule = (file: string): boolean =>
      file.startsWith('api/engine/rules/') &&
      /= rule(?:<[^(]*>)?\(\{/.test(readFileSync(join(root, file), 'utf8'));
    const ruleFiles = files.filter(isRule);
    expect(ruleFiles.length).toBeGreaterThan(25);
    expect(imports.filter(({ from, target }) => isRule(from) && ruleFiles.includes(target))).toEqual([]);
    const listed = imports
      .filter(({ from }) => from === 'api/engine/all-rules.ts')
      .map(({ target }) => target);
    expect(ruleFiles.filter((file) => !listed.includes(file))).toEqual([]);
    const tested = imports.filter(({ from }) => from.startsWith('tests/')).map(({ target }) => target);
    expect(ruleFiles.filter((file) => !tested.includes(file))).toEqual([]);
  });

  it('keeps every source file within 400 lines', () => {
    const long = files
      .filter((file) => !file.startsWith('tests/'))
      .map((file) => ({ file, lines: readFileSync(join(root, file), 'utf8').split('\n').length }))
      .filter(({ lines }) => lines > 400);
    expect(long).toEqual([]);
  });
});

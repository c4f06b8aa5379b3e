import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
const packageJson = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  scripts: Record<string, string>;
  dependencies: object;
  devDependencies: object;
};

describe('the README', () => {
  it('shows the figures that the product gives', () => {
    for (const scheme of demoEstimate('saltglass-row').schemes) {
      const { totals, range, id, name, complies } = scheme;
      const pounds = (pence: number, digits: number): string =>
        `£${(pence / 100).toLocaleString('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits })}`;
      expect(readme).toContain(
        `| \`${id}\` | ${name} | ${complies} | ${totals.hours.toFixed(1)} h | ${pounds(totals.grossPence, 2)} | ${pounds(range.lowPence, 0)} to ${pounds(range.highPence, 0)} |`,
      );
    }
  });

  it('quotes the refusal in the words of the product', () => {
    const flat = readme.replace(/\n> /g, ' ').replace(/ {2,}/g, ' ');
    const finding = demoEstimate('saltglass-row')
      .schemes.find(({ id }) => id === 'two-on-one')
      ?.findings.find(({ rule, outcome }) => rule === 'SP1' && outcome === 'fails');
    expect(flat).toContain(finding?.message);
    expect(flat).toContain(finding?.remedy);
  });

  it('names files and commands that exist', () => {
    const paths = [...readme.matchAll(/(?<!\/)(?:data|tests|api|scripts)\/[\w./-]+\.(?:json|svg|ts)/g)].map(
      ([path]) => path,
    );
    expect(paths.length).toBeGreaterThan(3);
    expect(paths.filter((path) => !existsSync(new URL(`../${path}`, import.meta.url)))).toEqual([]);
    const commands = [...readme.matchAll(/npm run (?:-s )?(\w+)/g)].map(([, name]) => name ?? '');
    expect(commands.filter((name) => packageJson.scripts[name] === undefined)).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  const developers = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');

  it('gives a reason for every package, and for none that is not there', () => {
    const table = developers.slice(developers.indexOf('## Packages'), developers.indexOf('## Decisions'));
    const named = [...table.matchAll(/^\| ([^|]+) \|/gm)]
      .flatMap(([, names]) => (names ?? '').split(', '))
      .filter((name) => name !== 'package' && !name.startsWith('---'));
    expect(named.sort()).toEqual(
      [...Object.keys(packageJson.dependencies), ...Object.keys(packageJson.devDependencies)].sort(),
    );
  });

  it('names folders that exist', () => {
    const folders = [...developers.matchAll(/`((?:api|data|tests|scripts|ui)\/[\w/]*)`/g)].map(
      ([, path]) => path ?? '',
    );
    expect(folders.length).toBeGreaterThan(10);
    expect(folders.filter((path) => !existsSync(new URL(`../${path}`, import.meta.url)))).toEqual([]);
  });
});

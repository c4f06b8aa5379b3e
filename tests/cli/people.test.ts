import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { peopleArguments } from '../../scripts/people/arguments.ts';
import { projectRoot } from '../http/test-app.ts';

const verbs = ['owner', 'list', 'invite', 'close', 'password'];
const read = (...argv: string[]) => peopleArguments(argv, verbs);

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'people '));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the command as people do, with what comes through the pipe. */
function people(argv: readonly string[], input = ''): { code: number | null; out: string; err: string } {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'scripts/people.ts', ...argv], {
    cwd: projectRoot,
    env: { PATH: process.env.PATH, DATABASE_URL: `file:${join(folder, 'jobs.db')}` },
    input,
    encoding: 'utf8',
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

describe('the call', () => {
  it('names what is to be done, for whom, in which firm', () => {
    expect(read('owner', '--name', ' A. Owner ', '--email', 'A@Firm.example')).toEqual({
      verb: 'owner',
      firmId: 'own',
      name: 'A. Owner',
      email: 'a@firm.example',
      role: 'estimator',
    });
    expect(read('invite', '--name', 'B', '--role', 'read-only', '--firm', 'north')).toMatchObject({
      firmId: 'north',
      role: 'read-only',
    });
  });

  it.each([
    [[], 'Say what is to be done'],
    [['dismiss'], 'Say what is to be done'],
    [['owner', '--name', 'A'], '--email'],
    [['owner', '--email', 'a@b.example', '--name', ''], '--name'],
    [['owner', '--email', 'nowhere', '--name', 'A'], '--email'],
    [['invite', '--name', 'A', '--role', 'king'], '--role'],
    [['list', '--firm', 'North Branch'], '--firm'],
    [['owner', '--password', 'x'], 'password'],
  ])('%j is refused in words', (argv, words) => {
    expect(read(...argv)).toEqual(expect.stringContaining(words));
  });
});

describe('people of a store', { timeout: 300_000 }, () => {
  it('are set up, invited, listed, given a password and closed, and no password is ever said', () => {
    const address = ['--email', 'a@firm.example'];
    const short = people(['owner', '--name', 'A. Owner', ...address], 'elevenchars\n');
    expect([short.code, short.err]).toEqual([2, expect.stringContaining('12 characters')]);
    const made = people(['owner', '--name', 'A. Owner', ...address], 'a password of some length\n');
    expect([made.code, made.err]).toEqual([0, '']);
    const twice = people(['owner', '--name', 'A. Owner', ...address], 'a password of some length\n');
    expect([twice.code, twice.err]).toEqual([1, expect.stringContaining('has an account already')]);
    const invited = people(['invite', '--name', 'B. Helper', '--role', 'read-only']);
    expect([invited.code, invited.out]).toEqual([0, expect.stringMatching(/\/invitation#[\w-]{43}\n$/)]);
    const listed = people(['list']);
    expect(listed.out).toContain('A. Owner, a@firm.example: owner');
    expect(listed.out).toContain('B. Helper: invited as read-only');
    expect(listed.out).not.toContain(invited.out.trim().split('#')[1]);
    const nobody = people(['invite', '--name', 'C', '--firm', 'north']);
    expect([nobody.code, nobody.err]).toEqual([1, expect.stringContaining('set up its owner first')]);
    expect(people(['password', ...address], 'another one of length\n').code).toBe(0);
    const last = people(['close', ...address]);
    expect([last.code, last.err]).toEqual([1, expect.stringContaining('only owner')]);
    const all = [short, made, twice, invited, listed, nobody, last].map(({ out, err }) => out + err).join('');
    expect(all).not.toMatch(/elevenchars|of some length|another one/);
  });
});

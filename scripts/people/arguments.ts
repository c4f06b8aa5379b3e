import { parseArgs } from 'node:util';
import { type Role, roles } from '../../api/db/people-stores.ts';
import { OWN_FIRM } from '../../api/db/stores-of.ts';
import { email, personName } from '../../api/http/sign-in/said-by-people.ts';

/** What the command line asked for. */
export interface PeopleArguments {
  readonly verb: string;
  readonly firmId: string;
  /** Empty where none was given. */
  readonly name: string;
  /** In lower case; empty where none was given. */
  readonly email: string;
  readonly role: Role;
}

export const usage = `Usage: npm run -s people -- VERB [--email ADDRESS] [--name NAME] [--role ROLE] [--firm FIRM]

  owner     sets up somebody who may do all; asks for a password, or reads it from a pipe: --name, --email
  list      says who has an account, who is invited, in every firm, or in one
  invite    makes a link by which somebody sets up an account: --name, --role owner, estimator or read-only
  close     closes an account; its sessions end: --email
  password  sets a new password for an account, asked for or read from a pipe; its sessions end: --email

The first owner of the firm that the jobs on this machine belong to needs no --firm; another firm's has a word of your own,
such as --firm north-branch: each firm has its own jobs, prices and people. The store is the one that DATABASE_URL names, else the server's own;
the server may be running meanwhile.
Exit: 0 done; 1 it cannot be done as things are; 2 the call is faulty.`;

const FIRM = /^[a-z0-9][a-z0-9-]{0,39}$/;
const isRole = (word: string): word is Role => roles.some((role) => role === word);
const needs: Readonly<Record<string, readonly ('name' | 'email')[]>> = {
  owner: ['name', 'email'],
  list: [],
  invite: ['name'],
  close: ['email'],
  password: ['email'],
};

/** What is wrong with an address or a name that was given, in words; null: nothing. */
function faultIn(option: string, schema: typeof email | typeof personName, given: string | undefined) {
  if (given === undefined) return null;
  const read = schema.safeParse(given);
  return read.success ? null : `--${option} ${read.error.issues[0]?.message ?? 'cannot be read'}.`;
}

/** Reads the command line; a string instead says what is wrong with it. */
export function peopleArguments(argv: readonly string[], verbs: readonly string[]): PeopleArguments | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        name: { type: 'string' },
        email: { type: 'string' },
        role: { type: 'string', default: 'estimator' },
        firm: { type: 'string', default: OWN_FIRM },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return usage;
    const [verb = '', ...rest] = positionals;
    if (!verbs.includes(verb) || rest.length > 0)
      return `Say what is to be done: ${verbs.join(', ')}.\n\n${usage}`;
    const missing = (needs[verb] ?? []).filter((option) => values[option] === undefined);
    if (missing.length > 0) return `${verb} wants --${missing.join(' and --')}.\n\n${usage}`;
    const { role, firm } = values;
    if (!isRole(role)) return `--role wants ${roles.join(', ')}, not "${role}".`;
    if (!FIRM.test(firm)) return `--firm wants a word of small letters, digits and hyphens, not "${firm}".`;
    const fault = faultIn('name', personName, values.name) ?? faultIn('email', email, values.email);
    if (fault !== null) return fault;
    const address = (values.email ?? '').trim().toLowerCase();
    return { verb, firmId: firm, name: (values.name ?? '').trim(), email: address, role };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}

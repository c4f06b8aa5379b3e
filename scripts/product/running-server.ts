import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The product's server as people start it, on a free port, with a store of its own. */
export interface RunningServer {
  readonly address: string;
  /** Ends it at once, as a power cut would. */
  readonly kill: () => Promise<void>;
  /** Ends it and clears its store away. */
  readonly close: () => Promise<void>;
  /** Starts it again on the same store; on the same address. */
  readonly again: () => Promise<RunningServer>;
}

async function addressOf(child: ChildProcess): Promise<string> {
  let said = '';
  return new Promise((resolve, reject) => {
    child.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const address = /https?:\/\/[\w.:[\]-]+/.exec(said)?.[0];
      if (address !== undefined) resolve(address);
    });
    child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.on('exit', (code) =>
      reject(new Error(`the server ended with ${code} before it listened: ${said}`)),
    );
  });
}

async function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill(signal);
  await gone;
}

const urlIn = (folder: string): string => pathToFileURL(join(folder, 'store.db')).href;

async function startOn(
  folder: string,
  port: string,
  env: Readonly<Record<string, string>> = {},
): Promise<RunningServer> {
  const child = spawn(process.execPath, ['--import', 'tsx', join('api', 'http', 'server.ts')], {
    env: {
      ...process.env,
      PORT: port,
      HOST: '127.0.0.1',
      DATABASE_URL: urlIn(folder),
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await addressOf(child);
  return {
    address,
    kill: () => ended(child, 'SIGKILL'),
    close: async () => {
      await ended(child, 'SIGTERM');
      await rm(folder, { recursive: true, force: true });
    },
    again: () => startOn(folder, new URL(address).port, env),
  };
}

/** Starts the server on an empty store: its first start, with the demo jobs put in. */
export async function startServer(): Promise<RunningServer> {
  return startOn(await mkdtemp(join(tmpdir(), 'ringwright-')), '0');
}

/** Whoever does all on a server that others reach. */
export interface FirstOwner {
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

/** Sets an owner up as people do, the password through a pipe. */
async function setUpOwner(folder: string, { name, email, password }: FirstOwner): Promise<void> {
  const call = [join('scripts', 'people.ts'), 'owner', '--name', name, '--email', email];
  const child = spawn(process.execPath, ['--import', 'tsx', ...call], {
    env: { ...process.env, DATABASE_URL: urlIn(folder) },
    stdio: ['pipe', 'ignore', 'inherit'],
  });
  child.stdin?.end(password);
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error(`No owner could be set up: the command ended with ${code}.`);
}

/** As `startServer`, reached by others in a network that is trusted, so that people sign in. */
export async function startForOthers(owner: FirstOwner): Promise<RunningServer> {
  const folder = await mkdtemp(join(tmpdir(), 'ringwright-'));
  await setUpOwner(folder, owner);
  return startOn(folder, '0', { HOST: '0.0.0.0', TRUSTED_NETWORK: 'yes' });
}

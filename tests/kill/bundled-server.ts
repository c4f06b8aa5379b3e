import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The server's own program in one file, which starts in a fifth of the time; laid out as the project is. */
export interface BundledServer {
  readonly databaseUrl: string;
  readonly databasePath: string;
  readonly start: () => Promise<ServerProcess>;
  /** Clears program and store away. */
  readonly clear: () => Promise<void>;
}

/** A server that runs as a process of its own. */
export interface ServerProcess {
  readonly url: string;
  readonly child: ChildProcess;
  /** What it wrote to standard output and to standard error so far. */
  readonly out: () => string;
  readonly err: () => string;
  /** Its exit code; null when a signal ended it. */
  readonly ended: Promise<number | null>;
  /** Ends it without warning, and waits until it is gone. */
  readonly kill: () => Promise<void>;
}

async function bundleInto(folder: string): Promise<string> {
  const outDir = join(folder, 'api', 'http');
  await mkdir(outDir, { recursive: true });
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      ssr: join(root, 'api', 'http', 'server.ts'),
      outDir,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'server.mjs', codeSplitting: false } },
    },
  });
  // What the program looks for beside itself.
  for (const name of ['data', 'package.json', 'node_modules'])
    await symlink(join(root, name), join(folder, name));
  await symlink(join(root, 'api', 'db', 'migrations'), join(outDir, 'migrations'));
  return join(outDir, 'server.mjs');
}

function startProgram(program: string, env: Readonly<Record<string, string>>): Promise<ServerProcess> {
  const child = spawn(process.execPath, [program], {
    env: { PATH: process.env.PATH, HOME: process.env.HOME, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const said = { out: '', err: '' };
  child.stderr.on('data', (data) => {
    said.err += data;
  });
  const ended = once(child, 'exit').then(([code]: (number | null)[]) => code ?? null);
  return new Promise((resolve, reject) => {
    ended.then((code) => reject(new Error(`ended with ${code} before it listened: ${said.err}`)));
    child.stdout.on('data', (data) => {
      said.out += data;
      const url = /Ringwright is at (\S+?)(?:,|\n)/.exec(said.out)?.[1];
      if (url === undefined) return;
      const kill = async (): Promise<void> => {
        child.kill('SIGKILL');
        await ended;
      };
      resolve({ url, child, out: () => said.out, err: () => said.err, ended, kill });
    });
  });
}

/** Bundles the server into a folder of its own, with room for a store beside it. */
export async function bundledServer(): Promise<BundledServer> {
  const folder = await mkdtemp(join(process.env.SCRATCH_FOLDER ?? tmpdir(), 'bundled-'));
  const program = await bundleInto(folder);
  const databasePath = join(folder, 'store', 'jobs.db');
  const databaseUrl = pathToFileURL(databasePath).href;
  return {
    databaseUrl,
    databasePath,
    start: () => startProgram(program, { PORT: '0', DATABASE_URL: databaseUrl, SCREEN_FOLDER: folder }),
    clear: () => rm(folder, { recursive: true, force: true }),
  };
}

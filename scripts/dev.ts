import { spawn } from 'node:child_process';
import { createServer } from 'vite';

// Runs the server beside the screen's own server, which shows changes of the screen at once.
const port = process.env.PORT ?? '4310';
const server = spawn(process.execPath, ['--import', 'tsx', '--watch', 'api/http/server.ts'], {
  env: { ...process.env, PORT: port },
  stdio: 'inherit',
});
const screen = await createServer({ configFile: '.vite.config.ts' });
await screen.listen();
screen.printUrls();
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, async () => {
    server.kill(signal);
    await screen.close();
    process.exit(0);
  });
}

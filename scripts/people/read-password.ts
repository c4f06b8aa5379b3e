import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';
import { PASSWORD_LENGTHS } from '../../api/http/sign-in/password-hash.ts';
import { newPassword } from '../../api/http/sign-in/said-by-people.ts';
import { Refused } from '../product/job-file.ts';

/** Nothing that is typed is shown. */
const silent = new Writable({ write: (_chunk, _encoding, done) => done() });

/** Asks at the terminal, where nothing of the answer is shown. */
function asked(question: string): Promise<string> {
  const line = createInterface({ input: process.stdin, output: silent, terminal: true });
  process.stderr.write(question);
  return new Promise((resolve, reject) => {
    line.once('SIGINT', () => line.close());
    line.once('close', () => reject(new Refused('No password was given; nothing was changed.')));
    line.question('', (answer) => {
      process.stderr.write('\n');
      resolve(answer);
      line.close();
    });
  });
}

async function piped(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks)
    .toString('utf8')
    .replace(/\r?\n$/, '');
}

/** A password that was typed twice unseen, or came through a pipe; never from the command line, which others can list. */
export async function readPassword(): Promise<string> {
  const { least, most } = PASSWORD_LENGTHS;
  const isTyped = process.stdin.isTTY === true;
  const password = isTyped ? await asked(`Password, ${least} to ${most} characters: `) : await piped();
  const read = newPassword.safeParse(password);
  if (!read.success) throw new Refused(`The password ${read.error.issues[0]?.message}; nothing was changed.`);
  if (isTyped && (await asked('The same again: ')) !== password)
    throw new Refused('The two differ; nothing was changed.');
  return password;
}

import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const programs = process.platform === 'win32' ? ['soffice.com', 'soffice.exe'] : ['soffice', 'libreoffice'];

/** Where the usual installers put it, outside the search path. */
const usualPlaces = [
  '/Applications/LibreOffice.app/Contents/MacOS/soffice',
  'C:\\Program Files\\LibreOffice\\program\\soffice.com',
  'C:\\Program Files (x86)\\LibreOffice\\program\\soffice.com',
  '/usr/lib/libreoffice/program/soffice',
  '/opt/libreoffice/program/soffice',
  '/snap/bin/libreoffice',
];

/** The program: `SPREADSHEET_PATH` from the environment, else by the search path, else in the usual places. */
function findSpreadsheet(): string | null {
  const given = process.env.SPREADSHEET_PATH;
  if (given !== undefined && given !== '') return existsSync(given) ? given : null;
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => programs.map((program) => join(folder, program)));
  return [...onPath, ...usualPlaces].find((path) => existsSync(path)) ?? null;
}

function aptGet(...words: string[]): void {
  execFileSync('apt-get', words, {
    stdio: ['ignore', 'ignore', 'ignore'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}

/** Installs it where the system lets us (as root, with apt-get); what went wrong is returned in words. */
function install(): string {
  if (process.env.SPREADSHEET_PATH) return ' SPREADSHEET_PATH names no file.';
  if (process.getuid?.() !== 0) return '';
  try {
    aptGet('update', '-q');
    aptGet('install', '-y', '-q', '--no-install-recommends', 'libreoffice-calc');
    return '';
  } catch {
    return ' apt-get could not install it.';
  }
}

// Makes sure that LibreOffice is there, which recalculates workbooks in the tests, and says where it is.
const trouble = findSpreadsheet() === null ? install() : '';
const found = findSpreadsheet();
if (found === null) {
  console.error(
    `Missing: LibreOffice Calc, which recalculates workbooks in the tests: install it (package libreoffice-calc) or name its soffice in SPREADSHEET_PATH.${trouble}`,
  );
  process.exit(1);
}
console.log(found);

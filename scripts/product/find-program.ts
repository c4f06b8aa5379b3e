import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A program that is not ours, which tests check our work with. */
export interface TestProgram {
  readonly name: string;
  readonly purpose: string;
  /** The environment variable by which a person names its path. */
  readonly variable: string;
  /** What it is called on the search path, best first. */
  readonly commands: readonly string[];
  /** Where the usual installers put it, outside the search path. */
  readonly usualPlaces: readonly string[];
  /** Debian's packages that bring it. */
  readonly packages: readonly string[];
}

/** LibreOffice Calc, which recalculates workbooks. */
export const spreadsheet: TestProgram = {
  name: 'LibreOffice Calc',
  purpose: 'which recalculates workbooks in the tests',
  variable: 'SPREADSHEET_PATH',
  commands: process.platform === 'win32' ? ['soffice.com', 'soffice.exe'] : ['soffice', 'libreoffice'],
  usualPlaces: [
    '/Applications/LibreOffice.app/Contents/MacOS/soffice',
    'C:\\Program Files\\LibreOffice\\program\\soffice.com',
    'C:\\Program Files (x86)\\LibreOffice\\program\\soffice.com',
    '/usr/lib/libreoffice/program/soffice',
    '/opt/libreoffice/program/soffice',
    '/snap/bin/libreoffice',
  ],
  packages: ['libreoffice-calc'],
};

/** Chromium, in which the journeys through the product are made. */
export const browser: TestProgram = {
  name: 'Chromium',
  purpose: 'in which the tests go through the product as a person would',
  variable: 'CHROMIUM_PATH',
  commands: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome.exe'],
  usualPlaces: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    '/snap/bin/chromium',
  ],
  packages: ['chromium', 'fonts-dejavu-core'],
};

/** LibreCAD, which draws what is made for drafting programs. */
export const drafting: TestProgram = {
  name: 'LibreCAD',
  purpose: 'which draws DXF files in the tests',
  variable: 'LIBRECAD_PATH',
  commands: process.platform === 'win32' ? ['librecad.exe'] : ['librecad'],
  usualPlaces: [
    '/Applications/LibreCAD.app/Contents/MacOS/LibreCAD',
    'C:\\Program Files\\LibreCAD\\LibreCAD.exe',
    'C:\\Program Files (x86)\\LibreCAD\\LibreCAD.exe',
  ],
  packages: ['librecad'],
};

/** Poppler's tools beside each other: what a PDF reader that is not ours finds in our papers. */
export const pdfReader: TestProgram = {
  name: 'Poppler',
  purpose: 'which reads PDFs in the tests',
  variable: 'PDFTOTEXT_PATH',
  commands: process.platform === 'win32' ? ['pdftotext.exe'] : ['pdftotext'],
  usualPlaces: ['/opt/homebrew/bin/pdftotext', '/usr/local/bin/pdftotext'],
  packages: ['poppler-utils'],
};

/** Where the program is: as its variable says, else by the search path, else in the usual places; null: nowhere. */
export function findProgram({ variable, commands, usualPlaces }: TestProgram): string | null {
  const given = process.env[variable];
  if (given !== undefined && given !== '') return existsSync(given) ? given : null;
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => commands.map((command) => join(folder, command)));
  return [...onPath, ...usualPlaces].find((path) => existsSync(path)) ?? null;
}

function aptGet(...words: string[]): void {
  execFileSync('apt-get', words, {
    stdio: ['ignore', 'ignore', 'ignore'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}

/** Installs it where the system lets us (as root, with apt-get); what went wrong is returned in words. */
export function installProgram({ variable, packages }: TestProgram): string {
  if (process.env[variable]) return ` ${variable} names no file.`;
  if (process.getuid?.() !== 0) return '';
  try {
    aptGet('update', '-q');
    aptGet('install', '-y', '-q', '--no-install-recommends', ...packages);
    return '';
  } catch {
    return ' apt-get could not install it.';
  }
}

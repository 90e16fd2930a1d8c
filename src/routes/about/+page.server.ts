import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One bundled package and the notice it asks to be passed on. */
export interface Notice {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
}

/** Build tools whose run-time part is in the app all the same. */
const builtIn = ['svelte', '@sveltejs/kit', 'devalue', 'clsx', 'esm-env'];

/** Read once, while the page is built: version, commit and the notices of all that is bundled. */
export function load(): {
  readonly version: string;
  readonly commit: string;
  readonly notices: readonly Notice[];
} {
  const own = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    readonly packages: Readonly<Record<string, LockEntry>>;
  };
  const notices = Object.entries(lock.packages)
    .filter(([path, entry]) => path !== '' && (entry.dev !== true || builtIn.includes(nameOf(path))))
    .map(([path, entry]) => readNotice(path, entry))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
  return { version: own.version, commit: readCommit(), notices };
}

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
}

function readNotice(path: string, entry: LockEntry): Notice {
  return {
    name: nameOf(path),
    version: entry.version ?? '',
    licence: entry.license ?? readDeclared(path),
    text: readLicenceText(path),
  };
}

function readDeclared(path: string): string {
  const declared = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8')) as {
    readonly license?: unknown;
  };
  return typeof declared.license === 'string' ? declared.license : 'see the text';
}

function readLicenceText(path: string): string {
  const files = readdirSync(path).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name));
  const texts = files.map((name) => readFileSync(join(path, name), 'utf8').trim());
  return texts.join('\n\n');
}

function readCommit(): string {
  try {
    return execFileSync('git', ['rev-parse', 'HEAD'], { encoding: 'utf8' }).trim();
  } catch {
    return ''; // built from an archive of the source
  }
}

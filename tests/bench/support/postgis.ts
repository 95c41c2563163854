import { execFile, spawn } from 'node:child_process';
import { access, chown, glob, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';

/** A PostgreSQL server with PostGIS, for one bench: its data and its socket in a folder of its own, no port. */
export interface PostgisServer {
  /** Runs SQL; the rows come back tab by tab. Throws with the server's own words. */
  readonly run: (sql: string) => Promise<string>;
  readonly close: () => Promise<void>;
}

/** Debian's packages `postgresql` and `postgresql-15-postgis-3` lay them here. */
const PROGRAMS = '/usr/lib/postgresql/*/bin/initdb';
const extension = (version: string): string => `/usr/share/postgresql/${version}/extension/postgis.control`;

const exec = promisify(execFile);
const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** The folder of the programs, of a version that has PostGIS; null when there is none. */
async function programs(): Promise<string | null> {
  for await (const initdb of glob(PROGRAMS)) {
    const folder = dirname(initdb);
    if (await isThere(extension(folder.split('/').at(-2) ?? ''))) return folder;
  }
  return null;
}

/** The server refuses to run as root; Debian's package brings a user for it. Null: as whoever runs this. */
async function asUser(): Promise<{ readonly uid: number; readonly gid: number } | null> {
  if (process.getuid?.() !== 0) return null;
  const id = async (flag: string): Promise<number> => Number((await exec('id', [flag, 'postgres'])).stdout);
  return { uid: await id('-u'), gid: await id('-g') };
}

/** Starts it; null when the machine does not have it. */
export async function postgisServer(): Promise<PostgisServer | null> {
  const bin = await programs();
  if (bin === null) return null;
  const user = await asUser();
  const folder = await mkdtemp(join(tmpdir(), 'bench-postgis-'));
  const data = join(folder, 'data');
  const options = { cwd: folder, ...user };
  const close = async (): Promise<void> => {
    await exec(join(bin, 'pg_ctl'), ['-D', data, '-m', 'immediate', '-w', 'stop'], options).catch(
      () => undefined,
    );
    await rm(folder, { recursive: true, force: true });
  };
  try {
    if (user) await chown(folder, user.uid, user.gid);
    await exec(join(bin, 'initdb'), ['-D', data, '-A', 'trust', '-U', 'bench', '--no-sync'], options);
    const settings = `-k ${folder} -c listen_addresses= -c fsync=off`;
    const start = ['-D', data, '-o', settings, '-l', join(folder, 'log'), '-w', 'start'];
    await exec(join(bin, 'pg_ctl'), start, options);
  } catch (error) {
    await close();
    throw error;
  }
  const args = ['-h', folder, '-U', 'bench', '-d', 'postgres', '-qAt', '-F', '\t', '-v', 'ON_ERROR_STOP=1'];
  return { run: (sql) => piped(join(bin, 'psql'), args, sql), close };
}

function piped(program: string, args: readonly string[], input: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args);
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve(out);
      else reject(new Error(err.trim()));
    });
    child.stdin.end(input);
  });
}

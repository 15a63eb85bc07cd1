import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const SETTINGS = {
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  max_connections: '300',
};
const FOLDER = 'traybook-test-';

/** The PostgreSQL server for a test run: { adminUrl, what, stop }. */
export async function startServer(platform) {
  const given = process.env.TEST_DATABASE_URL;
  if (given)
    return { adminUrl: given, what: 'the server in TEST_DATABASE_URL', stop: async () => {} };
  return (await startContainer()) ?? (await startEmbedded(platform));
}

async function startContainer() {
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  try {
    const flags = Object.entries(SETTINGS).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
    const container = await new PostgreSqlContainer('postgres:18')
      .withCommand(['postgres', ...flags])
      .start();
    return {
      adminUrl: container.getConnectionUri(),
      what: 'container postgres:18',
      stop: () => container.stop(),
    };
  } catch (error) {
    // Only this sentence means that there is no container engine; everything else is a failure.
    if (error.message === 'Could not find a working container runtime strategy') return undefined;
    throw error;
  }
}

async function startEmbedded({ startEmbeddedServer, findProcess }) {
  sweep(findProcess);
  const dataDir = mkdtempSync(join(reachableTemp(), `${FOLDER}${process.pid}-`));
  if (process.getuid?.() === 0) chmodSync(dataDir, 0o711);
  const remove = () => rmSync(dataDir, { recursive: true, force: true });
  try {
    const server = await startEmbeddedServer({ dataDir, settings: SETTINGS, durable: false });
    return {
      adminUrl: server.url,
      what: `embedded server ${server.version}`,
      stop: async () => {
        await server.stop();
        remove();
      },
    };
  } catch (error) {
    remove();
    throw error;
  }
}

/** Root's server runs as another user, for whom a private temp folder is closed. */
function reachableTemp() {
  return process.getuid?.() === 0 && existsSync('/tmp') ? '/tmp' : tmpdir();
}

/** Removes what test runs that were killed could not remove. */
function sweep(findProcess) {
  const temp = reachableTemp();
  for (const name of readdirSync(temp).filter((entry) => entry.startsWith(FOLDER))) {
    const pid = Number(name.slice(FOLDER.length).split('-')[0]);
    if (Number.isInteger(pid) && !findProcess(pid)) {
      rmSync(join(temp, name), { recursive: true, force: true });
    }
  }
}

// npm test: builds, runs the checks and every test, and ends with one line of figures.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { stripVTControlCharacters } from 'node:util';

const root = fileURLToPath(new URL('..', import.meta.url));
const running = new Set();
let interrupted = false;
const total = { passed: 0, failed: 0, skipped: 0 };

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    interrupted = true;
    for (const child of running) child.kill(signal);
  });
}

function run(command, args, stdio) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio });
    running.add(child);
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on('data', (chunk) => {
        output += chunk;
      });
    }
    child.once('error', (error) => {
      output += error.message;
    });
    child.once('close', (code) => {
      running.delete(child);
      resolve({ code, output });
    });
  });
}

/** One check counts as one test; what it says is shown only when it fails. */
async function check(name, command, args) {
  if (interrupted) return;
  const begin = performance.now();
  const { code, output } = await run(command, args, ['ignore', 'pipe', 'pipe']);
  if (interrupted) return;
  const seconds = ((performance.now() - begin) / 1000).toFixed(1);
  console.log(`${code === 0 ? 'ok    ' : 'FAILED'} ${name} (${seconds} s)`);
  if (code !== 0) console.log(output.trimEnd());
  total[code === 0 ? 'passed' : 'failed'] += 1;
}

const script = (name) => check(name, 'npm', ['run', '--silent', name]);

/** What Jest says of the files that `args` choose; undefined when it never got to a result. */
async function jest(args) {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-results-'));
  const file = join(folder, 'jest.json');
  try {
    const given = ['--experimental-vm-modules', '--disable-warning=ExperimentalWarning'];
    given.push('node_modules/jest/bin/jest.js', '--config', 'test/jest.config.mjs');
    // A failed test may leave something open; the run must end all the same.
    given.push('--forceExit', '--json', `--outputFile=${file}`, ...args);
    const { code } = await run(process.execPath, given, ['ignore', 'ignore', 'inherit']);
    const results = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
    return { code, results };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const isBrowserTest = ({ name }) => relative(root, name).startsWith(join('test', 'browser'));

/**
 * A browser on a busy machine may miss a click. Its files that failed are run once more, whole, on data
 * of their own and with the machine to themselves; that this was needed is said, so that nobody gets
 * used to it.
 */
async function tests(args) {
  const first = await jest(args);
  const late = first.results?.testResults.filter((f) => f.status === 'failed' && isBrowserTest(f));
  if (interrupted || !late?.length) return count([first]);
  console.log(`Tried again:\n${failures(late)}`);
  const names = late.map(({ name }) => name);
  const second = await jest(['--runTestsByPath', ...names]);
  const rest = first.results.testResults.filter(({ name }) => !names.includes(name));
  const code = rest.some(({ status }) => status === 'failed') ? 1 : 0;
  count([{ code, results: { testResults: rest } }, second]);
}

/** One line for every test that failed, and for every file that could not be run. */
function failures(files) {
  const said = files.flatMap(({ name, message, assertionResults }) => {
    const failed = assertionResults.filter(({ status }) => status === 'failed');
    const lines = failed.map(({ fullName, failureMessages }) => [fullName, failureMessages[0]]);
    return (lines.length > 0 ? lines : [['the file', message]]).map(
      ([what, why]) =>
        `  ${relative(root, name)}: ${what}: ${stripVTControlCharacters(why ?? '').split('\n')[0]}`,
    );
  });
  return said.join('\n');
}

function count(runs) {
  for (const { code, results } of runs) {
    const files = results?.testResults ?? [];
    const each = files.flatMap(({ assertionResults }) => assertionResults);
    const of = (...states) => each.filter(({ status }) => states.includes(status)).length;
    const broken = files.filter(({ status }) => status === 'failed');
    const notRun = broken.filter(({ assertionResults }) =>
      assertionResults.every(({ status }) => status !== 'failed'),
    );
    const failed = of('failed') + notRun.length;
    if (broken.length > 0) console.log(`Failed:\n${failures(broken)}`);
    total.passed += of('passed');
    total.skipped += of('pending', 'todo', 'skipped', 'disabled');
    // A run that ended badly without a failed test to show for it is a failure too.
    total.failed += code !== 0 && failed === 0 ? 1 : failed;
  }
}

console.log(`Node ${process.version}, ${availableParallelism()} processors`);
await check('build', 'npm', ['run', '--silent', 'build']);
await script('build:web');
await script('typecheck:web');
// Two at a time: more would only wait for each other on a small machine.
await Promise.all([script('lint'), script('boundaries').then(() => script('unused'))]);
if (!interrupted) await tests(process.argv.slice(2));
if (interrupted) {
  console.log('Interrupted: there is no result.');
  process.exitCode = 130;
} else {
  const { passed, failed, skipped } = total;
  console.log(`TOTAL: ${passed} passed, ${failed} failed, ${skipped} skipped`);
  if (failed > 0) process.exitCode = 1;
}

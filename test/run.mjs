// npm test: builds, runs the checks and every test, and ends with one line of figures.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

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

async function tests(args) {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-results-'));
  const file = join(folder, 'jest.json');
  try {
    const jest = ['--experimental-vm-modules', '--disable-warning=ExperimentalWarning'];
    jest.push('node_modules/jest/bin/jest.js', '--config', 'test/jest.config.mjs');
    // A failed test may leave something open; the run must end all the same.
    jest.push('--forceExit', '--json', `--outputFile=${file}`, ...args);
    const { code } = await run(process.execPath, jest, ['ignore', 'ignore', 'inherit']);
    count(existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A browser test may be tried twice; that it had to be is said, so that nobody gets used to it. */
function secondTries(results) {
  const late = results.testResults.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter(({ status, invocations }) => status === 'passed' && invocations > 1)
      .map(({ fullName }) => `  ${relative(root, name)}: ${fullName}`),
  );
  if (late.length > 0) console.log(`Passed only when tried again:\n${late.join('\n')}`);
}

function count(results, code) {
  if (results) secondTries(results);
  const failed = results ? results.numFailedTests + results.numRuntimeErrorTestSuites : 0;
  total.passed += results?.numPassedTests ?? 0;
  total.skipped += results ? results.numPendingTests + results.numTodoTests : 0;
  // A run that ended badly without a failed test to show for it is a failure too.
  total.failed += code !== 0 && failed === 0 ? 1 : failed;
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

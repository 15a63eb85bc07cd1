import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { croston, exponentialSmoothing } from '../../libs/purchasing/src/domain/forecast/index.js';
import { inventedWeeks, type ShelfDone, type ShelvesTask } from './forecast-shelves.js';

/**
 * How fast a hundred thousand series of two years of weeks are judged, forecast and turned into
 * proposals on two cores (`TRAYBOOK_BENCH_SERIES`), and how the methods compare with those of the
 * package forecast of R, where Rscript and the package are there.
 */
const SERIES = Number(process.env.TRAYBOOK_BENCH_SERIES ?? 100_000);
const SHELF = 250;
const WEEKS = 104;
const CORES = 2;
const LIMIT_SECONDS = 60;
const LIMIT_MEGABYTES = 1024;
const TIMES_FASTER = 50;

const load = () => loadavg()[0]?.toFixed(1);

/** Every shelf is done by one of two workers, which take turns of equal length. */
async function proposals(): Promise<boolean> {
  const shelves = Math.ceil(SERIES / SHELF);
  const start = performance.now();
  const cpu = process.cpuUsage();
  let [done, proposed, megabytes, told] = [0, 0, 0, 0];
  const tell = ({ proposed: n }: ShelfDone) => {
    done += 1;
    proposed += n;
    megabytes = Math.max(megabytes, process.memoryUsage().rss / 1e6);
    if (performance.now() - told < 5000) return;
    told = performance.now();
    const seconds = ((told - start) / 1000).toFixed(0);
    console.log(`  ${((100 * done) / shelves).toFixed(0)} % after ${seconds} s`);
  };
  const share = Math.ceil(shelves / CORES);
  await Promise.all(
    Array.from({ length: CORES }, (_, i) => {
      const firstShelf = i * share;
      const task: ShelvesTask = {
        ...{ firstShelf, shelves: Math.max(0, Math.min(share, shelves - firstShelf)) },
        ...{ items: SHELF, weeks: WEEKS },
      };
      return finished(task, tell);
    }),
  );
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const perSeries = (user + system) / 1000 / (shelves * SHELF);
  console.log(
    `${shelves * SHELF} series x ${WEEKS} weeks: ${proposed} proposals in ${seconds.toFixed(1)} s ` +
      `on ${CORES} cores, ${perSeries.toFixed(2)} ms of CPU each, at most ${megabytes.toFixed(0)} MB ` +
      `(load ${load()}, ${cpus().length} cores)`,
  );
  const limit = (LIMIT_SECONDS * SERIES) / 100_000;
  const fast = seconds <= limit;
  if (!fast) console.log(`  ABOVE ${limit.toFixed(0)} s`);
  if (megabytes > LIMIT_MEGABYTES) console.log(`  ABOVE ${LIMIT_MEGABYTES} MB`);
  return fast && megabytes <= LIMIT_MEGABYTES;
}

function finished(workerData: ShelvesTask, tell: (done: ShelfDone) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./forecast-shelves.js', import.meta.url), { workerData });
    worker.on('message', tell);
    worker.once('error', reject);
    worker.once('exit', (code) =>
      code === 0 ? resolve() : reject(new Error(`a worker ended with ${code}`)),
    );
  });
}

const ALPHA = 0.1;
const COMPARED = 300;

/** The same two methods with the same weight; R prints its CPU seconds and every forecast. */
const R_PROGRAM = `
suppressPackageStartupMessages(library(forecast))
series <- strsplit(readLines(commandArgs(trailingOnly = TRUE)[1]), ",")
series <- lapply(series, function(x) ts(as.numeric(x)))
run <- function(name, f) {
  f(series[[1]])
  cpu <- system.time(found <- sapply(series, f))
  cat(name, cpu[["user.self"]] + cpu[["sys.self"]], sprintf("%.12g", found), "\\n")
}
run("croston", function(y) as.numeric(croston(y, h = 1, alpha = ${ALPHA})$mean))
run("ses", function(y) as.numeric(ses(y, h = 1, alpha = ${ALPHA}, initial = "simple")$mean))
`;

const OWN: Readonly<Record<string, (y: Float64Array) => number>> = {
  croston: (y) => croston(y, { alpha: ALPHA }).level,
  ses: (y) => exponentialSmoothing(y, { alpha: ALPHA }).level,
};

function againstR(): boolean {
  const version = spawnSync('Rscript', ['-e', 'cat(as.character(packageVersion("forecast")))'], {
    encoding: 'utf8',
  });
  if (version.status !== 0) {
    console.log(
      'NOT COMPARED WITH R: there is no Rscript here, or R has no package forecast. ' +
        'On Debian: apt-get install r-cran-forecast',
    );
    return false;
  }
  const series = inventedWeeks(COMPARED, WEEKS, 5).filter((y) => y.some((amount) => amount > 0));
  const folder = mkdtempSync(join(tmpdir(), 'traybook-bench-'));
  try {
    const [data, program] = [join(folder, 'series.csv'), join(folder, 'compare.R')];
    writeFileSync(data, `${series.map((y) => y.join(',')).join('\n')}\n`);
    writeFileSync(program, R_PROGRAM);
    const lines = execFileSync('Rscript', [program, data], { encoding: 'utf8' }).trim().split('\n');
    console.log(`R package forecast ${version.stdout}, ${series.length} series (load ${load()})`);
    return lines.map((line) => compare(line, series)).every(Boolean);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function compare(line: string, series: readonly Float64Array[]): boolean {
  const [name = '', cpu = '', ...found] = line.trim().split(' ');
  const method = OWN[name];
  if (!method) throw new Error(`R tells of something else: ${line.slice(0, 80)}`);
  const off = series.reduce(
    (most, y, i) => Math.max(most, Math.abs(method(y) - Number(found[i]))),
    0,
  );
  const theirs = (Number(cpu) / series.length) * 1000;
  const own = ownMilliseconds(method, series);
  const times = theirs / own;
  const good = off < 1e-9 && times >= TIMES_FASTER;
  console.log(
    `  ${name.padEnd(8)} R ${theirs.toFixed(3)} ms, here ${own.toFixed(5)} ms per series: ` +
      `${times.toFixed(0)} x as fast; forecasts differ by at most ${off.toExponential(1)}` +
      (good ? '' : '   NOT AS IT SHOULD BE'),
  );
  return good;
}

/** CPU time of many rounds over the same series. */
function ownMilliseconds(
  method: (y: Float64Array) => number,
  series: readonly Float64Array[],
): number {
  const rounds = 200;
  let sum = 0;
  const round = () => {
    for (const y of series) sum += method(y);
  };
  round();
  const before = process.cpuUsage();
  for (let i = 0; i < rounds; i += 1) round();
  const { user, system } = process.cpuUsage(before);
  if (!Number.isFinite(sum)) throw new Error('a forecast is no number');
  return (user + system) / 1000 / rounds / series.length;
}

const checks = [await proposals(), againstR()];
if (checks.includes(false)) process.exitCode = 1;

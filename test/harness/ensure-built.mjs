// For tests that run what is built: node test/harness/ensure-built.mjs <folder> ...
import { buildIfStale } from './build.mjs';

buildIfStale(process.argv.slice(2));

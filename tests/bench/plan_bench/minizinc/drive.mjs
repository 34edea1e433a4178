// Runs one tier in the Node package minizinc's WebAssembly build.
//
//   node drive.mjs PACKAGE MODEL DATA TIER REACHED SECONDS
//
// REACHED is what the tier before came to. The package's browser worker is given
// what it expects of a browser: messages both ways and names of its files; its
// solver serves once only, hence a process for each tier. Prints, with times in
// seconds of processor time of the search, that is without loading, flattening and
// setting up the solver (which are `startup`), places in slots:
//   plan SECONDS TOTAL start end mode cook start end mode cook ...
//   proven SECONDS TOTAL
//   ended SECONDS
//   startup SECONDS
import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';

const [folder, modelPath, dataPath, tier, reached, limit] = process.argv.slice(2);
const dist = path.join(folder, 'dist');
const now = () => { const used = process.cpuUsage(); return (used.user + used.system) / 1e6; };
const wallBegin = performance.now() / 1000;

let work;
let heard = () => {};
globalThis.addEventListener = (name, listener) => { if (name === 'message') work = listener; };
globalThis.postMessage = (message) => heard(message);
globalThis.require = createRequire(import.meta.url);
globalThis.__dirname = dist;
globalThis.__filename = path.join(dist, 'minizinc-worker.js');

// The solver's own limit is of time on the wall: as many times as long, beside other work, and what is
// found after the limit is the caller's to drop.
const kSlower = 3;

const begin = now();
vm.runInThisContext(fs.readFileSync(globalThis.__filename, 'utf8'));
await work({ data: { wasmURL: path.join(dist, 'minizinc.wasm'), dataURL: path.join(dist, 'minizinc.data') } });

// The solver says only at the end how long it searched, hence the lines wait.
const lines = [];
let ended;
let searched;
let total;
heard = (message) => {
  if (message.type === 'statistics' && message.statistics.solveTime !== undefined) {
    ended = now();
    searched = message.statistics.solveTime * Math.min(1, ended / (performance.now() / 1000 - wallBegin));
  }
  if (message.type === 'solution') {
    const [places, value] = message.output.default.split('#');
    total = Number(value);
    lines.push(['plan', now(), `${total} ${places.trim()}`]);
  }
  if (message.type === 'status' && message.status === 'OPTIMAL_SOLUTION') lines.push(['proven', now(), total]);
  if (message.type === 'error' || message.type === 'stderr') console.error(JSON.stringify(message));
};
await work({ data: {
  jsonStream: true,
  files: {
    'dinner.mzn': fs.readFileSync(modelPath, 'utf8'),
    'dinner.dzn': `${fs.readFileSync(dataPath, 'utf8')}\ntier = ${tier};\nreached = ${reached};\n`,
  },
  args: ['--solver', 'chuffed', '-f', '-i', '-s', '--solver-time-limit', String(Math.round(kSlower * Number(limit) * 1000)),
    '--output-mode', 'item', 'dinner.mzn', 'dinner.dzn'],
} });
ended ??= now();
searched ??= ended - begin;
for (const [what, when, rest] of lines)
  console.log(`${what} ${Math.max(0, searched - (ended - when)).toFixed(4)} ${rest}`);
console.log(`ended ${searched.toFixed(4)}`);
console.log(`startup ${(ended - begin - searched).toFixed(4)}`);

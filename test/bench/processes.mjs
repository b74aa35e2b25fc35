// Times of whole processes: run `npm run build` first, on an otherwise idle machine.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../../dist/program/main.js', import.meta.url));
const demo = fileURLToPath(new URL('../../data-demo/lantern-parade', import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'holdwright-bench-'));

/** Wall time in ms of one run of Node. */
function timed(args) {
  const start = performance.now();
  const run = spawnSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'] });
  if (run.status !== 0) throw new Error(`${args.join(' ')}: ${run.stderr}`);
  return performance.now() - start;
}
const median = (list) => [...list].sort((p, q) => p - q)[Math.floor(list.length / 2)];

const bare = [];
const help = [];
for (let i = 0; i < 21; i++) {
  bare.push(timed(['-e', '0']));
  help.push(timed([main, '--help']));
}
const ratio = median(help) / median(bare);
console.log(
  `--help ${median(help).toFixed(0)} ms, bare node ${median(bare).toFixed(0)} ms: ${ratio.toFixed(2)} times`,
);

for (const [name, args] of [
  ['rank', ['rank', demo]],
  ['report', ['report', demo, '--out', out]],
]) {
  const times = Array.from({ length: 5 }, () => timed([main, ...args]));
  console.log(`${name} of demo one: median ${median(times).toFixed(0)} ms`);
}

const peak = `await import(${JSON.stringify(`file://${main}`)});process.on('exit',()=>console.error(process.resourceUsage().maxRSS))`;
const run = spawnSync(
  process.execPath,
  [
    '--input-type=module',
    '-e',
    `process.argv=[process.argv[0],'holdwright','report',${JSON.stringify(demo)},'--out',${JSON.stringify(out)}];${peak}`,
  ],
  { encoding: 'utf8' },
);
const kilobytes = Number(run.stderr.trim().split('\n').at(-1));
console.log(`report of demo one: peak memory ${(kilobytes / 1024).toFixed(0)} MB`);
rmSync(out, { recursive: true });

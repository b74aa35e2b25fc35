// Runs the built program over and over and compares every byte that it writes: twice, in other time zones, under other
// locales, and on other versions of Node. Ends with 1 where a byte differs.
//
//   node test/cli/same-bytes.mjs [path of another node …]
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const program = join(root, 'dist/program/main.js');
const folder = mkdtempSync(join(tmpdir(), 'holdwright-bytes-'));
const home = { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' };

const say = (text) => process.stdout.write(`${text}\n`);

/** Every way to run, each with what differs from the first. */
const ways = [
  { name: 'once', node: process.execPath, env: home },
  { name: 'again', node: process.execPath, env: home },
  { name: 'half a day ahead', node: process.execPath, env: { ...home, TZ: 'Pacific/Auckland' } },
  { name: 'in German', node: process.execPath, env: { ...home, LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' } },
  {
    name: 'in Turkish',
    node: process.execPath,
    env: { ...home, LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  },
  ...process.argv.slice(2).map((node) => ({ name: versionOf(node), node, env: home })),
];

function versionOf(node) {
  return `Node ${execFileSync(node, ['--version'], { encoding: 'utf8' }).trim()}`;
}

/** Hash of each file that one run writes. */
function run({ node, env }, number) {
  const out = join(folder, String(number));
  const study = join(root, 'data-demo/lantern-parade');
  execFileSync(node, [program, 'report', study, '--out', out], { env: { PATH: process.env.PATH, ...env } });
  return ['report.pdf', 'results.json'].map((name) => {
    return `${createHash('sha256')
      .update(readFileSync(join(out, name)))
      .digest('hex')}  ${name}`;
  });
}

try {
  say(versionOf(process.execPath));
  const [first, ...others] = ways.map((way, number) => ({ ...way, hashes: run(way, number) }));
  say(first.hashes.join('\n'));
  for (const { name, hashes } of others) {
    const isSame = hashes.every((hash, index) => hash === first.hashes[index]);
    say(`${isSame ? 'same' : 'DIFFERENT'}: ${name}`);
    if (!isSame) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

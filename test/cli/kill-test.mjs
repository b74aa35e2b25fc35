// Kills `report` at random moments, and processes that do nothing but write two files that belong together, and looks
// at what stands there then. Needs the built program: npm run build && node test/cli/kill-test.mjs
// Prints one line for each kill; ends with 1 when anything is wrong.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const kills = 20;
const names = ['report.pdf', 'results.json'];

const self = fileURLToPath(import.meta.url);
const root = fileURLToPath(new URL('../../', import.meta.url));
const program = join(root, 'dist/program/main.js');

const pairOf = (age) => names.map((name) => ({ name, bytes: Buffer.from(`${age} `.repeat(300_000)) }));

if (process.argv[2] === 'write') {
  const { writeTogether } = await import(join(root, 'dist/cli/write-together.js'));
  const { disk } = await import(join(root, 'dist/archive/store.js'));
  for (let round = 0; ; round++) writeTogether(disk, process.argv[3], pairOf(['old', 'new'][round % 2]));
}

const say = (text) => process.stdout.write(`${text}\n`);
let wrong = 0;
const expectThat = (holds, what) => {
  if (holds) return;
  wrong++;
  say(`WRONG: ${what}`);
};

const later = (waitMs) => new Promise((resolve) => setTimeout(resolve, waitMs));

/** Names of what is not meant to be seen. */
const hidden = (folder) => (existsSync(folder) ? readdirSync(folder).filter((name) => name[0] === '.') : []);
/** Returns as soon as a process has begun to write into a folder. */
async function begun(folder, process) {
  while (!hidden(folder).some((name) => name.includes(`.${process}.`))) await later(1);
}

const contents = (folder) =>
  names.map((name) => (existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : null));

/** Starts a process, waits, kills it unless it has ended, and waits for its end. */
async function killed(words, wait) {
  const child = spawn(process.execPath, words, { stdio: 'ignore' });
  const end = new Promise((resolve) => child.once('exit', resolve));
  await Promise.race([wait(child.pid), end]);
  child.kill('SIGKILL');
  await end;
}

/** Which of the known pairs each file is of; only whole files of one pair may stand together. */
function check(folder, pairs, what) {
  const found = contents(folder).map((bytes, index) => {
    if (bytes === null) return 'none';
    return Object.keys(pairs).find((age) => pairs[age][index].equals(bytes)) ?? 'half';
  });
  const there = found.filter((age) => age !== 'none');
  expectThat(!found.includes('half') && new Set(there).size <= 1, `${what}: ${found.join(', ')}`);
  say(`${what}: ${found.join(', ')}; ${hidden(folder).length} left behind`);
}

const scratch = mkdtempSync(join(tmpdir(), 'holdwright-kill-'));

const written = join(scratch, 'written');
const ages = ['old', 'new'];
const writtenPairs = Object.fromEntries(ages.map((age) => [age, pairOf(age).map(({ bytes }) => bytes)]));
for (let kill = 1; kill <= kills; kill++) {
  await killed([self, 'write', written], async (process) => {
    await begun(written, process);
    await later(Math.random() * 150);
  });
  check(written, writtenPairs, `writing, kill ${kill}`);
}

/** Two studies whose reports differ in both files. */
const studies = Object.fromEntries(
  ages.map((age) => {
    const folder = join(scratch, age);
    cpSync(join(root, 'data-demo/lantern-parade'), folder, { recursive: true });
    const path = join(folder, 'study.csv');
    writeFileSync(path, readFileSync(path, 'utf8').replace('Lantern heron', `Lantern heron ${age}`));
    return [age, folder];
  }),
);
const reportWords = (age, out) => [program, 'report', studies[age], '--out', out];
const startedMs = Date.now();
const reportPairs = Object.fromEntries(
  ages.map((age) => {
    const out = join(scratch, `whole-${age}`);
    expectThat(spawnSync(process.execPath, reportWords(age, out)).status === 0, `report of ${age}`);
    return [age, contents(out)];
  }),
);
const reportMs = (Date.now() - startedMs) / ages.length;

const out = join(scratch, 'report');
cpSync(join(scratch, 'whole-old'), out, { recursive: true });

/** Half of the kills at any moment of a report, half just when it writes. */
const moments = {
  'any time': () => later(Math.random() * reportMs),
  'as it writes': async (process) => {
    await begun(out, process);
    await later(Math.random() ** 2 * 300);
  },
};
for (let kill = 1; kill <= kills; kill++) {
  const [moment, wait] = Object.entries(moments)[kill % 2];
  await killed(reportWords(ages[Math.floor(kill / 2) % 2], out), wait);
  check(out, reportPairs, `report, kill ${kill}, ${moment}`);
}
writeFileSync(join(out, '.report.pdf.999999999.partial'), 'left by a process that is gone');
expectThat(spawnSync(process.execPath, reportWords('new', out)).status === 0, 'the report after all kills');
check(out, reportPairs, 'the report after all kills');
expectThat(readdirSync(out).sort().join() === names.join(), `in the folder: ${readdirSync(out).join(', ')}`);

rmSync(scratch, { recursive: true, force: true });
say(wrong === 0 ? 'nothing is wrong' : `${wrong} things are wrong`);
process.exit(wrong === 0 ? 0 : 1);

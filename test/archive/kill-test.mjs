// Kills processes while they file decisions, at random moments, and looks at what they leave behind; then lets
// several file at the same time. Needs the built program: npm run build && node test/archive/kill-test.mjs
// Prints one line for each kill; ends with 1 when anything is wrong.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const kills = 20;
const writers = 4;
const recordsEach = 5;

const self = fileURLToPath(import.meta.url);
const built = process.env.HOLDWRIGHT_BUILT ?? fileURLToPath(new URL('../../dist/', import.meta.url));
const load = (path) => import(new URL(path, `file://${built.endsWith('/') ? built : `${built}/`}`));

const { fileRecord } = await load('archive/file-record.js');
const { ledgerText } = await load('archive/ledger.js');
const { readArchive } = await load('archive/read-archive.js');
const { disk } = await load('archive/store.js');
const { viewArchive } = await load('app/records.js');

const say = (text) => process.stdout.write(`${text}\n`);
const sha256 = (bytes) => createHash('sha256').update(bytes).digest('hex');

/** A record of some size, so that a kill often falls into its writing. */
function filingInto(archive, because) {
  const bytes = new Uint8Array(400_000).fill(because.length);
  const files = Array.from({ length: 8 }, (_, index) => ({ path: `inputs/part-${index}.csv`, bytes }));
  const inputs = files.map(({ path }) => ({ name: path, file: path, sha256: sha256(bytes) }));
  const words = {
    question: 'Change?',
    project: 'Heron',
    decision: 'adopt',
    because,
    by: '',
    date: '2026-03-14',
  };
  const said = {
    verdict: '',
    confidence: '',
    leader: null,
    baseline: null,
    lookAgain: null,
    supersedes: null,
  };
  const program = { version: '0.1.0', modelVersion: '1', inputHash: '', inputs, assumptions: null };
  const decision = { ...words, ...said, ...program, choice: { id: 'worm-a', label: 'Worm' } };
  return { archive, decision, payload: files, now: new Date().toISOString(), software: 'kill-test' };
}

/** Files decisions one after the other; waits while somebody else does. */
async function fileMany(archive, count) {
  for (let done = 0; done < count; ) {
    const result = fileRecord(disk, filingInto(archive, `record ${done} of ${process.pid}`));
    if (result.ok) done++;
    else if (result.issues.some(({ code }) => code === 'archive-busy'))
      await new Promise((resolve) => setTimeout(resolve, 5 + Math.random() * 20));
    else throw new Error(JSON.stringify(result.issues));
  }
}

const [role, folder, count] = process.argv.slice(2);
if (role === 'file') {
  await fileMany(folder, Number(count));
  process.exit(0);
}

const start = (archive, records) =>
  spawn(process.execPath, [self, 'file', archive, String(records)], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
const ended = (child) =>
  new Promise((resolve) => child.once('exit', (code, signal) => resolve(code ?? signal)));

let wrong = 0;
const expectThat = (holds, what) => {
  if (holds) return;
  wrong++;
  say(`WRONG: ${what}`);
};

/** What a reader finds before anybody put anything in order: every record whole, the ledger whole or not yet there. */
function checkRaw(archive) {
  const state = readArchive(disk, archive);
  const allowed = ['unlisted-record', 'unreadable-ledger'];
  const damage = (state?.issues ?? []).filter(({ code }) => !allowed.includes(code));
  expectThat(damage.length === 0, JSON.stringify(damage));
  const unlisted = (state?.issues ?? []).filter(({ code }) => code === 'unlisted-record').length;
  expectThat(unlisted <= 1, `${unlisted} records are not listed`);
  const isWhole = state === null || state.ledger !== null || !state.ledgerIsThere;
  expectThat(isWhole, 'half a ledger stands under its name');
  return state?.records.length ?? 0;
}

/** What holds once the next command has run. */
function checkSettled(archive, records) {
  const settled = viewArchive(disk, archive, new Date().toISOString(), false);
  if (settled === null) return;
  const { archive: state } = settled;
  expectThat(state.issues.length === 0, JSON.stringify(state.issues));
  expectThat(state.records.length === records, `${state.records.length} records in place of ${records}`);
  if (!existsSync(join(archive, 'ledger.json'))) return expectThat(records === 0, 'there is no ledger');
  const text = readFileSync(join(archive, 'ledger.json'), 'utf8');
  expectThat(
    text === ledgerText(state.records.map(({ entry }) => entry)),
    'the ledger does not match the records',
  );
  const strange = readdirSync(archive).filter((name) => name.startsWith('.'));
  expectThat(strange.length === 0, `left behind: ${strange.join(', ')}`);
}

const archive = join(mkdtempSync(join(tmpdir(), 'holdwright-kill-')), 'records');
for (let kill = 1; kill <= kills; kill++) {
  const child = start(archive, 1_000_000);
  const waitMs = 150 + Math.random() * 400;
  await new Promise((resolve) => setTimeout(resolve, waitMs));
  child.kill('SIGKILL');
  await ended(child);
  const left = existsSync(archive) ? readdirSync(archive).filter((name) => name.startsWith('.')) : [];
  const records = checkRaw(archive);
  checkSettled(archive, records);
  say(
    `kill ${kill} after ${Math.round(waitMs)} ms: ${records} records, left behind ${left.join(' ') || '–'}`,
  );
  // Few enough to be read quickly the next time.
  if (records > 30) rmSync(archive, { recursive: true });
}

const crowded = join(mkdtempSync(join(tmpdir(), 'holdwright-crowd-')), 'records');
const children = Array.from({ length: writers }, () => start(crowded, recordsEach));
const codes = await Promise.all(children.map(ended));
expectThat(
  codes.every((code) => code === 0),
  `writers ended with ${codes.join(', ')}`,
);
checkSettled(crowded, checkRaw(crowded));
expectThat(
  checkRaw(crowded) === writers * recordsEach,
  `${checkRaw(crowded)} records of ${writers * recordsEach}`,
);
say(`${writers} writers at the same time: ${checkRaw(crowded)} records`);

rmSync(archive, { recursive: true, force: true });
rmSync(crowded, { recursive: true, force: true });
say(wrong === 0 ? 'nothing is wrong' : `${wrong} things are wrong`);
process.exit(wrong === 0 ? 0 : 1);

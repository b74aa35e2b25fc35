import type { Issue } from '../problem/issue.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import { bagDeclaration, bagNames, infoValue, oxumOf } from './bag.js';
import { sha256Of, textOf } from './digest.js';
import type { FileKind } from './file-operations.js';
import { fold, type Manifest, type ManifestLine, readManifest } from './manifest.js';
import * as say from './messages.js';
import { readDecision } from './record.js';

/** What stands in a bag's folder: its path inside, and its bytes when it is a file that could be read. */
export interface BagItem {
  path: string;
  kind: FileKind;
  bytes: Uint8Array | null;
}

/** Takes note of what is wrong with a file of the bag. */
type Tell = (path: string, trouble: Trouble, line?: number) => void;

/**
 * Everything that is wrong with a bag, named by file, in the order of the files; nothing for a sound one.
 *
 * @param id folder of the bag; must be what the bag calls itself
 * @param items everything in the folder but folders that hold something
 * @param seal hash of the tag manifest in the ledger; null when the ledger is not known
 */
export function checkBag(id: string, items: readonly BagItem[], seal: string | null): Issue[] {
  const issues: Issue[] = [];
  const tell: Tell = (path, trouble, line) =>
    issues.push(issueAt({ file: `${id}/${path}`, line: line ?? null, column: null }, trouble));
  checkNames(items, tell);
  const files = readableFiles(items, tell);
  checkDeclaration(files, tell);

  const tagManifest = manifestIn(files, bagNames.tagManifest, null, tell);
  const manifest = manifestIn(files, bagNames.manifest, bagNames.payload, tell);
  const isPayload = (path: string) => path.startsWith(`${bagNames.payload}/`);
  const payload = new Map([...files].filter(([path]) => isPayload(path)));
  const tags = new Map([...files].filter(([path]) => !isPayload(path) && path !== bagNames.tagManifest));
  if (manifest !== null) compare(manifest.lines, payload, tell);
  if (tagManifest !== null) compare(tagManifest.lines, tags, tell);
  checkInfo(id, files, payload, tell);
  checkDecision(id, files, tell);

  if (issues.length === 0) checkKept(files, tell);
  const tagBytes = files.get(bagNames.tagManifest);
  if (issues.length === 0 && seal !== null && tagBytes !== undefined && sha256Of(tagBytes) !== seal)
    tell(bagNames.tagManifest, say.rewritten(sha256Of(tagBytes), seal));
  return inOrder(issues);
}

/** In the order of files and lines; what two checks found counts once. */
function inOrder(issues: readonly Issue[]): Issue[] {
  const once = new Map(issues.map((issue) => [JSON.stringify(issue), issue]));
  return [...once.values()].sort(
    (a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) || (a.line ?? 0) - (b.line ?? 0),
  );
}

function checkNames(items: readonly BagItem[], tell: Tell): void {
  const seen = new Map<string, string>();
  for (const { path } of [...items].sort((a, b) => (a.path < b.path ? 1 : -1))) {
    if (!/^[A-Za-z0-9._/-]+$/.test(path)) tell(path, say.strangeName(path));
    const twin = seen.get(fold(path));
    // Capitals sort first, so the one met later is the odd one.
    if (twin !== undefined) tell(path, say.caseTwin(path, twin));
    seen.set(fold(path), path);
  }
}

/** The files with their bytes; what is none is told. */
function readableFiles(items: readonly BagItem[], tell: Tell): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  for (const { path, kind, bytes } of items) {
    if (kind === 'link') tell(path, say.linkInRecord());
    else if (kind !== 'file') tell(path, say.notAFile());
    else if (bytes === null) tell(path, say.unreadableFile());
    else files.set(path, bytes);
  }
  return files;
}

function checkDeclaration(files: Map<string, Uint8Array>, tell: Tell): void {
  const bytes = files.get(bagNames.declaration);
  if (bytes === undefined) {
    tell(bagNames.declaration, say.missingFile());
    return;
  }
  const text = textOf(bytes);
  if (text !== bagDeclaration) tell(bagNames.declaration, say.notABag(text, bagDeclaration));
}

function manifestIn(
  files: Map<string, Uint8Array>,
  name: string,
  below: string | null,
  tell: Tell,
): Manifest | null {
  const bytes = files.get(name);
  if (bytes === undefined) {
    tell(name, say.missingFile());
    return null;
  }
  const manifest = readManifest(textOf(bytes), below);
  for (const { line, trouble } of manifest.troubles) tell(name, trouble, line);
  return manifest;
}

/** Holds the files that are listed against those that are there. */
function compare(lines: readonly ManifestLine[], files: Map<string, Uint8Array>, tell: Tell): void {
  const listed = new Map(lines.map((line) => [line.path, line]));
  const strays = new Map<string, string>();
  for (const [path, bytes] of files) if (!listed.has(path)) strays.set(path, sha256Of(bytes));
  for (const { path, sha256 } of lines) {
    const bytes = files.get(path);
    if (bytes !== undefined) {
      const actual = sha256Of(bytes);
      if (actual !== sha256) tell(path, alteration(path, bytes, actual, sha256, lines));
      continue;
    }
    const renamed = [...strays].find(([, hash]) => hash === sha256)?.[0];
    if (renamed !== undefined) {
      tell(renamed, say.renamedFile(path));
      strays.delete(renamed);
    }
    tell(path, say.missingFile());
  }
  for (const path of strays.keys()) tell(path, say.unlistedFile());
}

function alteration(
  path: string,
  bytes: Uint8Array,
  actual: string,
  expected: string,
  lines: readonly ManifestLine[],
): Trouble {
  const other = lines.find((line) => line.sha256 === actual);
  if (other !== undefined) return say.swappedFile(actual, expected, other.path);
  const tail = textOf(bytes.subarray(-1024));
  if (path.endsWith('.pdf') && !tail.includes('%%EOF')) return say.cutShort(actual, expected);
  return say.changedFile(actual, expected);
}

function checkInfo(
  id: string,
  files: Map<string, Uint8Array>,
  payload: Map<string, Uint8Array>,
  tell: Tell,
): void {
  const name = bagNames.info;
  const bytes = files.get(name);
  if (bytes === undefined) {
    tell(name, say.missingFile());
    return;
  }
  const text = textOf(bytes);
  const counted = oxumOf([...payload.values()].map((file) => ({ bytes: file })));
  const oxum = infoValue(text, 'Payload-Oxum');
  if (oxum === null) tell(name, say.missingLabel('Payload-Oxum'));
  else if (oxum.value !== counted) tell(name, say.wrongCount(oxum.value, counted), oxum.line);
  const identifier = infoValue(text, 'External-Identifier');
  if (identifier === null) tell(name, say.missingLabel('External-Identifier'));
  else if (identifier.value !== id) tell(name, say.renamedRecord(identifier.value, id), identifier.line);
}

/** Path of the decision inside a bag. */
export const decisionPath = `${bagNames.payload}/decision.json`;

function checkDecision(id: string, files: Map<string, Uint8Array>, tell: Tell): void {
  const bytes = files.get(decisionPath);
  if (bytes === undefined) return;
  if (readDecision(textOf(bytes))?.id !== id) tell(decisionPath, say.unreadableDecision());
}

/** What only counts when everything else is sound: the decision is there and names the files that are there. */
function checkKept(files: Map<string, Uint8Array>, tell: Tell): void {
  const bytes = files.get(decisionPath);
  if (bytes === undefined) {
    tell(decisionPath, say.missingFile());
    return;
  }
  const { inputs, assumptions } = readDecision(textOf(bytes))!;
  for (const { file, sha256 } of [...inputs, ...(assumptions === null ? [] : [assumptions])]) {
    const path = `${bagNames.payload}/${file}`;
    const input = files.get(path);
    if (input === undefined) tell(path, say.missingFile());
    else if (sha256Of(input) !== sha256) tell(path, say.changedFile(sha256Of(input), sha256));
  }
}

import { printable } from '../problem/printable.js';
import { bytesOf, sha256Of } from './digest.js';
import { manifestText } from './manifest.js';

/** A file of a bag: its path inside the bag, parts joined by `/`, and what it holds. */
export interface BagFile {
  path: string;
  bytes: Uint8Array;
}

/** What bag-info.txt says; texts from people are put on one line. */
export interface BagInfo {
  id: string;
  description: string;
  contact: string;
  /** ISO date on which the bag is made. */
  date: string;
  /** Program and version. */
  software: string;
}

/** Names that the standard gives to the files beside the payload. */
export const bagNames = {
  declaration: 'bagit.txt',
  info: 'bag-info.txt',
  manifest: 'manifest-sha256.txt',
  tagManifest: 'tagmanifest-sha256.txt',
  payload: 'data',
} as const;

/** What makes a folder a bag. */
export const bagDeclaration = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

/**
 * The files of a bag round a payload: the payload first, then the files that vouch for it, the one that vouches for
 * those last. The same payload and information give the same bytes.
 *
 * @param payload paths below the payload folder
 * @source rfc-8493, The BagIt File Packaging Format (V1.0), section 2
 */
export function bagFiles(payload: readonly BagFile[], info: BagInfo): BagFile[] {
  const kept = payload.map(({ path, bytes }) => ({ path: `${bagNames.payload}/${path}`, bytes }));
  const tags: BagFile[] = [
    { path: bagNames.declaration, bytes: bytesOf(bagDeclaration) },
    { path: bagNames.info, bytes: bytesOf(infoText(info, kept)) },
    { path: bagNames.manifest, bytes: bytesOf(manifestOf(kept)) },
  ];
  return [...kept, ...tags, { path: bagNames.tagManifest, bytes: bytesOf(manifestOf(tags)) }];
}

/** Hash over everything in a bag, by way of the manifests: a bag with the same seal is the same bag. */
export function sealOf(files: readonly BagFile[]): string {
  return sha256Of(files.find(({ path }) => path === bagNames.tagManifest)!.bytes);
}

function manifestOf(files: readonly BagFile[]): string {
  return manifestText(files.map(({ path, bytes }) => ({ path, sha256: sha256Of(bytes) })));
}

function infoText(info: BagInfo, payload: readonly BagFile[]): string {
  const lines: [label: string, value: string][] = [
    ['Bag-Software-Agent', info.software],
    ['Bagging-Date', info.date],
    ['Contact-Name', info.contact],
    ['External-Description', info.description],
    ['External-Identifier', info.id],
    ['Payload-Oxum', oxumOf(payload)],
  ];
  return lines
    .map(([label, value]) => [label, printable(value).trim()])
    .filter(([, value]) => value !== '')
    .map(([label, value]) => `${label}: ${value}\n`)
    .join('');
}

/** Bytes and files of a payload, as bag-info.txt counts them. */
export function oxumOf(payload: readonly Pick<BagFile, 'bytes'>[]): string {
  return `${payload.reduce((sum, { bytes }) => sum + bytes.length, 0)}.${payload.length}`;
}

/** A label of bag-info.txt with its line; null when it is not there. Folded lines are joined. */
export function infoValue(text: string, label: string): { value: string; line: number } | null {
  const lines = text.split(/\r?\n/);
  const index = lines.findIndex((line) => line.toLowerCase().startsWith(`${label.toLowerCase()}:`));
  if (index < 0) return null;
  let value = lines[index]!.slice(label.length + 1);
  for (let next = index + 1; /^[ \t]/.test(lines[next] ?? ''); next++) value += ` ${lines[next]!.trim()}`;
  return { value: value.trim(), line: index + 1 };
}

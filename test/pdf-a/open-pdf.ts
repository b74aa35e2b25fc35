import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import { type Operation, operationsOf } from './operations.js';

export interface OpenPage {
  dictionary: PDFDict;
  operations: Operation[];
}

/** An element of the structure, with its parts in reading order; a number is content of a page. */
export interface Element {
  kind: string;
  dictionary: PDFDict;
  parts: (Element | { page: PDFDict | null; id: number })[];
}

/** A PDF taken apart, so that rules can look into every corner of it. */
export interface OpenPdf {
  bytes: Uint8Array;
  /** The same, one character for each byte. */
  source: string;
  catalog: PDFDict;
  trailer: PDFDocument['context']['trailerInfo'];
  info: PDFDict | null;
  /** Every dictionary of the file, however deep, streams' own included. */
  dictionaries: PDFDict[];
  streams: PDFRawStream[];
  strings: (PDFString | PDFHexString)[];
  names: PDFName[];
  pages: OpenPage[];
  structure: Element | null;
}

export async function openPdf(bytes: Uint8Array): Promise<OpenPdf> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const { context, catalog } = document;
  const all = context.enumerateIndirectObjects().flatMap(([, object]) => within(object));
  const infoEntry = context.trailerInfo.Info;
  const info = infoEntry && context.lookup(infoEntry);
  const root = catalog.lookup(PDFName.of('StructTreeRoot'));
  return {
    bytes,
    source: Buffer.from(bytes).toString('latin1'),
    catalog,
    trailer: context.trailerInfo,
    info: info instanceof PDFDict ? info : null,
    dictionaries: all.filter((object) => object instanceof PDFDict),
    streams: all.filter((object) => object instanceof PDFRawStream),
    strings: all.filter((object) => object instanceof PDFString || object instanceof PDFHexString),
    names: all.filter((object) => object instanceof PDFName),
    pages: document.getPages().map(({ node }) => ({
      dictionary: node,
      operations: operationsOf(contentOf(node.lookup(PDFName.of('Contents')))),
    })),
    structure: root instanceof PDFDict ? elementOf(root, null) : null,
  };
}

/** An object and everything in it; what it refers to is met where it stands. */
function within(object: PDFObject): PDFObject[] {
  if (object instanceof PDFRawStream) return [object, ...within(object.dict)];
  if (object instanceof PDFArray) return [object, ...object.asArray().flatMap(within)];
  if (object instanceof PDFDict)
    return [object, ...object.entries().flatMap(([name, value]) => [name, ...within(value)])];
  return [object];
}

/** Unpacked bytes of a stream, one character each. */
export function contentOf(stream: PDFObject | undefined): string {
  if (stream instanceof PDFArray)
    return stream
      .asArray()
      .map((_, index) => contentOf(stream.lookup(index)))
      .join('\n');
  if (!(stream instanceof PDFRawStream)) return '';
  return Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1');
}

/** An entry, with references followed. */
export const entry = (dictionary: PDFDict | undefined, key: string): PDFObject | undefined =>
  dictionary?.lookup(PDFName.of(key));

/** An entry that is a dictionary; of a stream its own. */
export function dictionaryAt(dictionary: PDFDict | undefined, key: string): PDFDict | undefined {
  const value = entry(dictionary, key);
  if (value instanceof PDFRawStream) return value.dict;
  return value instanceof PDFDict ? value : undefined;
}

/** An entry that is an array, references followed. */
export function listAt(dictionary: PDFDict | undefined, key: string): PDFObject[] {
  const value = entry(dictionary, key);
  return value instanceof PDFArray ? value.asArray().map((_, index) => value.lookup(index)!) : [];
}

/** A name without its slash, a text, or a number, as text; empty for nothing. */
export function textAt(dictionary: PDFDict | undefined, key: string): string {
  const value = entry(dictionary, key);
  if (value instanceof PDFName) return value.decodeText();
  if (value instanceof PDFString || value instanceof PDFHexString) return value.decodeText();
  return value === undefined ? '' : String(value);
}

function elementOf(dictionary: PDFDict, page: PDFDict | null): Element {
  const own = dictionaryAt(dictionary, 'Pg') ?? page;
  const kids = entry(dictionary, 'K');
  const list = kids instanceof PDFArray ? listAt(dictionary, 'K') : kids === undefined ? [] : [kids];
  const parts = list.map((kid): Element['parts'][number] => {
    if (!(kid instanceof PDFDict)) return { page: own, id: Number(String(kid)) };
    if (textAt(kid, 'Type') !== 'MCR') return elementOf(kid, own);
    return { page: dictionaryAt(kid, 'Pg') ?? own, id: Number(textAt(kid, 'MCID')) };
  });
  return { kind: textAt(dictionary, 'S'), dictionary, parts };
}

/** Elements in reading order, the root left out. */
export function elements(from: Element | null): Element[] {
  return (from?.parts ?? []).flatMap((part) => ('kind' in part ? [part, ...elements(part)] : []));
}

export { PDFArray, PDFDict, PDFHexString, PDFName, PDFNumber, PDFRef };

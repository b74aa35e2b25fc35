import { inflateSync } from 'node:zlib';
import type { PDFDict, PDFObject } from '@cantoo/pdf-lib';

/** A file out of a PDF, under the name it is listed by. */
export interface AttachedFile {
  name: string;
  bytes: Uint8Array;
}

/** Most that one attachment may hold, unpacked: a few bytes can unpack to more than a computer holds. */
const largestAttachmentBytes = 64 * 1024 * 1024;

/** Most that all attachments of one PDF may hold together, unpacked. */
const largestTotalBytes = 256 * 1024 * 1024;

/**
 * The files that a PDF carries, in the order of its list; none for one that carries nothing. Whoever wrote the PDF
 * is not trusted: names are mere labels, and nothing is written anywhere.
 *
 * @param mostBytes what all of them together may hold, unpacked
 * @returns null when the bytes are no PDF, or one that is damaged or holds too much
 */
export async function attachedFiles(
  pdf: Uint8Array,
  mostBytes = largestTotalBytes,
): Promise<AttachedFile[] | null> {
  if (!looksWhole(pdf)) return null;
  const { PDFDocument, PDFName, ...library } = await import('@cantoo/pdf-lib');
  const entry = (dictionary: PDFDict, key: string) => dictionary.lookup(PDFName.of(key));
  const dictionary = (object: PDFObject | undefined): PDFDict | null =>
    object instanceof library.PDFDict ? object : null;
  const at = (from: PDFDict | null, key: string): PDFDict | null => from && dictionary(entry(from, key));

  const contentOf = (file: PDFDict | null, leftBytes: number): Uint8Array | null => {
    const places = at(file, 'EF');
    const stream = places && (entry(places, 'UF') ?? entry(places, 'F'));
    if (!(stream instanceof library.PDFRawStream)) return null;
    const filter = entry(stream.dict, 'Filter');
    if (filter === undefined) return stream.contents;
    // The one filter that this program's reports use, and every program that packs them anew keeps.
    return String(filter) === '/FlateDecode'
      ? inflateSync(stream.contents, { maxOutputLength: Math.min(largestAttachmentBytes, leftBytes) })
      : null;
  };

  try {
    const options = { updateMetadata: false, throwOnInvalidObject: true };
    const document = await PDFDocument.load(pdf, options);
    const listed = at(at(document.catalog, 'Names'), 'EmbeddedFiles');
    const names = listed && entry(listed, 'Names');
    if (!(names instanceof library.PDFArray)) return [];
    const files: AttachedFile[] = [];
    let leftBytes = mostBytes;
    for (let index = 0; index + 1 < names.size(); index += 2) {
      const name = names.lookup(index);
      const isText = name instanceof library.PDFString || name instanceof library.PDFHexString;
      const bytes = contentOf(dictionary(names.lookup(index + 1)), leftBytes);
      if (!isText || bytes === null || bytes.length > leftBytes) return null;
      leftBytes -= bytes.length;
      files.push({ name: name.decodeText(), bytes: new Uint8Array(bytes) });
    }
    return files;
  } catch {
    // The library says in many words what is broken; to whoever opens the file it is damaged.
    return null;
  }
}

/** Begins and ends as a PDF does: a copy that broke off must not pass for a PDF without attachments. */
function looksWhole(pdf: Uint8Array): boolean {
  const text = (from: number, to?: number) => Buffer.from(pdf.subarray(from, to)).toString('latin1');
  return text(0, 5) === '%PDF-' && text(-1024).includes('%%EOF');
}

import type { ArchivalDocument } from './archival-document.js';

/** A file that travels inside a PDF. */
export interface Attachment {
  /** Plain letters, digits, `.`, `_` and `-`: it may be written to any disk. */
  name: string;
  bytes: Uint8Array;
  mimeType: string;
  /** What it is to the report: what it was made from, its figures, or a help to read these. */
  relationship: 'Source' | 'Data' | 'Supplement';
  description: string;
}

/** What attaching needs of a pdfkit document; not in its types. */
interface Internals {
  _root: { data: { AF?: unknown[] } };
  ref(data: object): { end(content?: Uint8Array): void };
  addNamedEmbeddedFile(name: string, file: object): void;
}

/**
 * Embeds files and lists them where a reader's program looks for them. pdfkit's own way stores the checksum in the wrong
 * form and leaves out half of the names.
 *
 * @param modified the one date that all of them carry, so that no clock gets into the file
 */
export function attachFiles(
  document: ArchivalDocument,
  attachments: readonly Attachment[],
  modified: Date,
): void {
  const internals = document as unknown as Internals;
  const { data: catalog } = internals._root;
  for (const { name, bytes, mimeType, relationship, description } of attachments) {
    const content = internals.ref({
      Type: 'EmbeddedFile',
      Subtype: mimeType.replaceAll('/', '#2F'),
      Params: { Size: bytes.length, ModDate: modified },
    });
    content.end(bytes);
    const file = internals.ref({
      Type: 'Filespec',
      F: new String(name),
      UF: new String(name),
      Desc: new String(description),
      AFRelationship: relationship,
      EF: { F: content, UF: content },
    });
    file.end();
    internals.addNamedEmbeddedFile(name, file);
    catalog.AF = [...(catalog.AF ?? []), file];
  }
}

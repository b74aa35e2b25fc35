import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, it } from 'vitest';
import { attachedFiles } from '../../src/archive/attached.js';

/** A PDF that carries files of so many bytes, all the same: small in the file, large when unpacked. */
async function pdfWith(...sizes: number[]): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.addPage();
  for (const [index, size] of sizes.entries()) await document.attach(new Uint8Array(size), `${index}.csv`);
  return document.save();
}

it('attachments are read while they hold together what was allowed, and not beyond', async () => {
  const pdf = await pdfWith(40_000, 40_000, 20_000);
  expect(pdf.length).toBeLessThan(20_000);
  const files = await attachedFiles(pdf, 100_000);
  expect(files?.map(({ bytes }) => bytes.length)).toEqual([40_000, 40_000, 20_000]);
  expect(await attachedFiles(pdf, 99_999)).toBeNull();
  expect(await attachedFiles(pdf, 80_000)).toBeNull();
});

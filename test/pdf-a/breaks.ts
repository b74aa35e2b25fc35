/** A PDF as text, one character for each byte. */
type Break = (source: string) => string;

/** Puts one text in the place of another of the same length, so that nothing else in the file moves. */
const swap = (from: string | RegExp, to: string): Break => {
  return (source) => {
    const found = typeof from === 'string' ? from : from.exec(source)?.[0];
    if (found === undefined || !source.includes(found)) throw new Error(`the file has no ${from}`);
    if (to.length > found.length) throw new Error(`${to} is longer than ${found}`);
    // A function, as a text might hold signs that `replace` reads as commands.
    return source.replace(found, () => to.padEnd(found.length));
  };
};

/** Adds an object before the cross references; readers that look for objects find it. */
const add = (object: string): Break => {
  return (source) => source.replace(/\nxref\n/, () => `\n99999 0 obj\n${object}\nendobj\nxref\n`);
};

/** Ways to spoil a file, by the rule that must notice. */
export const breaks: Record<string, Break> = {
  header: swap(/%PDF-1\.7\n%..../, '%PDF-1.7\n%none'),
  'nothing-after-end': (source) => `${source}more\n`,
  'cross-references': (source) => source.replace(/startxref\n(\d+)/, 'startxref\n1$1'),
  identifier: swap(/\/ID \[<[^\]]*\]/, '/IX []'),
  strings: add('<< /A <abc> >>'),
  names: add(`<< /${'n'.repeat(128)} 1 >>`),
  streams: add('<< /Length 0 /Filter /LZWDecode >>\nstream\n\nendstream'),
  'no-actions': add('<< /Type /Action /S /JavaScript /JS (app.alert) >>'),
  'output-intent': swap('/S /GTS_PDFA1', '/S /GTS_PDFX'),
  'no-other-presentation': swap('/PageMode /UseOutlines', '/OCProperties 1'),
  'no-annotations': swap('/Tabs /S\n', '/Annots 1'),
  xml: swap('<pdfaid:part>', '<pdfaid:pxrt>'),
  level: swap('<pdfaid:part>3', '<pdfaid:part>2'),
  'same-as-info': swap('<rdf:li xml:lang="x-default">T', '<rdf:li xml:lang="x-default">t'),
  title: swap('/DisplayDocTitle true', '/DisplayDocTitle 0'),
  'embedded-files': swap('/AFRelationship /Source', '/AFRelationship /Sauce'),
  operators: swap(/\nBT\n/, '\nBY\n'),
  nesting: swap(/\nQ\n/, '\nn\n'),
  colours: swap('/DeviceRGB cs', '/DeviceLab cs'),
  'no-cmyk': add('<< /ColorSpace /DeviceCMYK >>'),
  states: add('<< /Type /ExtGState /TR /Identity >>'),
  intents: swap(/\n[\d.]+ w\n/, '\n/X ri\n'),
  objects: add('<< /Subtype /PS >>'),
  'tagged-or-artifact': swap('/Artifact <<\n/Type /Layout\n>> BDC', '/Span BMC'),
  'artifacts-apart': swap(/\nEMC\n\/Artifact <</, '\n   \n/Artifact <<'),
  'tab-order': swap('/Tabs /S', '/Tabs /R'),
  'page-resources': swap(/\/F\d+ [\d.]+ Tf/, '/G9 9 Tf'),
  embedded: swap('/FontFile2', '/FontFile4'),
  'glyph-numbers': swap('/CIDToGIDMap', '/CIDToGIDMop'),
  widths: swap(/\/W \[0 \[\d+ \d/, '/W [0 [1 1'),
  unicode: swap('/ToUnicode', '/ToUnicoda'),
  'no-empty-glyph': swap(/\[<[0-9a-f]{4}/, '[<0000'),
  tagged: swap('/Marked true', '/Marked 0'),
  language: swap('/Lang (en)', '/Lung (en)'),
  'standard-kinds': swap('/S /LBody', '/S /LBudy'),
  'content-reached': swap(/\/MCID 3\n/, '/MCID 9\n'),
  'parent-tree': swap(/\/StructParents 0/, '/StructParents 9'),
  headings: swap('/S /H2', '/S /H3'),
  figures: swap('/Alt (', '/Olt ('),
  tables: swap('/S /TBody', '/S /TFoot'),
  'table-heads': swap('/Scope /Column', '/Scope /Cells'),
  lists: swap('/S /LI', '/S /P'),
  outline: swap('/XYZ 0', '/Fit 0'),
};

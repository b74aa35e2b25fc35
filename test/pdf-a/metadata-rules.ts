import {
  contentOf,
  dictionaryAt,
  entry,
  listAt,
  type OpenPdf,
  type PDFDict,
  PDFRef,
  textAt,
} from './open-pdf.js';
import { type Rule, unless } from './rule.js';

/** What the XML metadata say, the Info dictionary mirrored, and the files that are carried. */
export const metadataRules: Rule[] = [
  {
    id: 'xml',
    clause: '19005-3, 6.6.2.1',
    demands: 'the catalog has metadata that are well-formed XML and not packed',
    faults: (pdf) => [
      ...unless(entry(dictionaryAt(pdf.catalog, 'Metadata'), 'Filter') === undefined, 'metadata are packed'),
      ...xmlFaults(metadataOf(pdf)),
    ],
  },
  {
    id: 'level',
    clause: '19005-3, 6.6.4',
    demands: 'the metadata claim part 3, level A',
    faults: (pdf) => {
      const xml = metadataOf(pdf);
      return [
        ...unless(valueIn(xml, 'pdfaid:part') === '3', `part ${valueIn(xml, 'pdfaid:part')}`),
        ...unless(valueIn(xml, 'pdfaid:conformance') === 'A', `level ${valueIn(xml, 'pdfaid:conformance')}`),
        ...unless(xml.includes('xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"'), 'another namespace'),
      ];
    },
  },
  {
    id: 'same-as-info',
    clause: '19005-3, 6.6.3',
    demands: 'the metadata say what the Info dictionary says',
    faults: (pdf) => {
      const xml = metadataOf(pdf);
      return mirrored.flatMap(([key, tag]) => {
        const [inInfo, inXml] = [textAt(pdf.info ?? undefined, key), valueIn(xml, tag)];
        const said = /Date$/.test(key) ? dateOf(inInfo) : inInfo;
        return unless(
          said === inXml,
          `${key} is ${JSON.stringify(said)}, ${tag} is ${JSON.stringify(inXml)}`,
        );
      });
    },
  },
  {
    id: 'title',
    clause: '14289-1, 7.1',
    demands: 'the file has a title, and readers show it',
    faults: (pdf) => [
      ...unless(valueIn(metadataOf(pdf), 'dc:title') !== '', 'no title'),
      ...unless(
        textAt(dictionaryAt(pdf.catalog, 'ViewerPreferences'), 'DisplayDocTitle') === 'true',
        'title not shown',
      ),
    ],
  },
  {
    id: 'embedded-files',
    clause: '19005-3, 6.8',
    demands:
      'carried files have two equal names, a kind, a relationship, a description and a date, and are associated',
    faults: ({ catalog, dictionaries }) => {
      const associated = referencesIn(catalog, 'AF');
      const named = listAt(dictionaryAt(dictionaryAt(catalog, 'Names'), 'EmbeddedFiles'), 'Names');
      const files = dictionaries.filter((found) => textAt(found, 'Type') === 'Filespec');
      return [
        ...unless(
          files.length === associated.length,
          `${associated.length} of ${files.length} are associated`,
        ),
        ...unless(named.length === 2 * files.length, `${named.length / 2} of ${files.length} are named`),
        ...files.flatMap(fileFaults),
      ];
    },
  },
];

const relationships = ['Source', 'Data', 'Alternative', 'Supplement', 'Unspecified'];

function fileFaults(file: PDFDict): string[] {
  const name = textAt(file, 'F');
  const embedded = ['F', 'UF'].map((key) => dictionaryAt(dictionaryAt(file, 'EF'), key));
  const faults = [
    ...unless(name !== '' && name === textAt(file, 'UF'), 'F and UF differ'),
    ...unless(/^[A-Za-z0-9_][A-Za-z0-9._-]*$/.test(name), 'a name that is no plain file name'),
    ...unless(textAt(file, 'Desc') !== '', 'no description'),
    ...unless(relationships.includes(textAt(file, 'AFRelationship')), 'no relationship'),
    ...unless(embedded[0] !== undefined && embedded[0] === embedded[1], 'not embedded under both names'),
    ...unless(/^[a-z]+\/[a-z0-9.+-]+$/.test(textAt(embedded[0], 'Subtype')), 'no MIME type'),
    ...unless(dateOf(textAt(dictionaryAt(embedded[0], 'Params'), 'ModDate')) !== '', 'no date'),
  ];
  return faults.map((fault) => `${name}: ${fault}`);
}

function referencesIn(dictionary: PDFDict, key: string): PDFRef[] {
  const list = entry(dictionary, key) as { asArray(): object[] } | undefined;
  return (list?.asArray() ?? []).filter((item) => item instanceof PDFRef);
}

const mirrored: [info: string, xml: string][] = [
  ['Title', 'dc:title'],
  ['Author', 'dc:creator'],
  ['Subject', 'dc:description'],
  ['Keywords', 'pdf:Keywords'],
  ['Creator', 'xmp:CreatorTool'],
  ['Producer', 'pdf:Producer'],
  ['CreationDate', 'xmp:CreateDate'],
  ['ModDate', 'xmp:ModifyDate'],
];

function metadataOf({ catalog }: OpenPdf): string {
  return Buffer.from(contentOf(entry(catalog, 'Metadata')), 'latin1').toString('utf8');
}

/** Text of the first element of a name, list items inside it looked through; empty for none. */
function valueIn(xml: string, tag: string): string {
  const inside = new RegExp(`<${tag}(?:\\s[^>]*)?>([\\s\\S]*?)</${tag}>`).exec(xml)?.[1] ?? '';
  const text = /<rdf:li[^>]*>([\s\S]*?)<\/rdf:li>/.exec(inside)?.[1] ?? inside;
  const signs: Record<string, string> = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };
  return text.replace(/&(\w+);/g, (whole, name) => signs[name] ?? whole);
}

/** `D:20260314000000Z` as `2026-03-14T00:00:00Z`; empty for anything else. */
function dateOf(text: string): string {
  const parts = /^D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)Z$/.exec(text);
  return parts ? `${parts.slice(1, 4).join('-')}T${parts.slice(4, 7).join(':')}Z` : '';
}

/** Tags closed in order, one root, no stray signs, no characters that XML forbids. */
function xmlFaults(xml: string): string[] {
  const body = xml.replace(/<\?[\s\S]*?\?>/g, '').trim();
  const open: string[] = [];
  const faults: string[] = [];
  let roots = 0;
  for (const [, text, closing, name, rest] of body.matchAll(
    /([^<]+)|<(\/?)([\w:]+)((?:\s+[\w:]+="[^"<]*")*\s*\/?)>|</g,
  )) {
    if (text !== undefined) {
      if (/&(?!(?:lt|gt|amp|quot|apos|#\d+|#x[\da-f]+);)/i.test(text)) faults.push(`stray & in ${text}`);
    } else if (name === undefined) faults.push('a stray <');
    else if (closing) faults.push(...unless(open.pop() === name, `</${name}> closes nothing`));
    else {
      if (open.length === 0) roots++;
      if (!rest!.endsWith('/')) open.push(name);
    }
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML forbids them
  const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(xml);
  return [
    ...faults,
    ...unless(roots === 1 && open.length === 0, `${roots} roots`),
    ...unless(!forbidden, 'a control character'),
  ];
}

import {
  contentOf,
  dictionaryAt,
  entry,
  listAt,
  PDFDict,
  PDFHexString,
  PDFName,
  textAt,
} from './open-pdf.js';
import { type Rule, unless } from './rule.js';

const filters = [
  'FlateDecode',
  'ASCIIHexDecode',
  'ASCII85Decode',
  'RunLengthDecode',
  'DCTDecode',
  'CCITTFaxDecode',
];
const actions = ['GoTo', 'GoToR', 'GoToE', 'Thread', 'URI', 'Named', 'SubmitForm'];

/** What holds for the file as a whole, whatever is drawn. */
export const fileRules: Rule[] = [
  {
    id: 'header',
    clause: '19005-3, 6.1.2',
    demands: 'the file starts with its version, then a comment of four bytes above 127',
    faults: ({ source }) =>
      unless(
        /^%PDF-1\.[0-7]\r?\n%[\x80-\xff]{4}/.test(source),
        `starts with ${JSON.stringify(source.slice(0, 16))}`,
      ),
  },
  {
    id: 'nothing-after-end',
    clause: '19005-3, 6.1.3',
    demands: 'nothing but one line end follows the last end mark',
    faults: ({ source }) => unless(/%%EOF(?:\r\n|\r|\n)?$/.test(source), 'bytes follow %%EOF'),
  },
  {
    id: 'cross-references',
    clause: '19005-3, 6.1.4',
    demands: 'the file says where its cross references start, and they start there',
    faults: ({ source }) => {
      const at = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(source)?.[1]);
      return unless(source.startsWith('xref', at), `no xref at ${at}`);
    },
  },
  {
    id: 'identifier',
    clause: '19005-3, 6.1.3',
    demands: 'the trailer has two identifiers; nothing is encrypted',
    faults: ({ trailer }) => [
      ...unless(/^\[ <[0-9a-f]{32}> <[0-9a-f]{32}> \]$/i.test(String(trailer.ID)), `ID is ${trailer.ID}`),
      ...unless(trailer.Encrypt === undefined, 'the file is encrypted'),
    ],
  },
  {
    id: 'strings',
    clause: '19005-3, 6.1.6 and 6.1.13',
    demands: 'hexadecimal strings have an even count of digits; no string is longer than 32767 bytes',
    faults: ({ strings }) =>
      strings
        .filter((text) =>
          text instanceof PDFHexString
            ? !/^(?:[0-9a-f]{2})*$/i.test(text.asString().replace(/\s/g, ''))
            : text.asBytes().length > 32767,
        )
        .map(String),
  },
  {
    id: 'names',
    clause: '19005-3, 6.1.8 and 6.1.13',
    demands: 'names have at most 127 bytes',
    faults: ({ names }) => names.filter((name) => name.decodeText().length > 127).map(String),
  },
  {
    id: 'streams',
    clause: '19005-3, 6.1.7',
    demands: 'streams hold their bytes themselves, and no filter is LZW or Crypt',
    faults: ({ streams }) =>
      streams.flatMap(({ dict }) => {
        const filter = entry(dict, 'Filter');
        const used =
          filter instanceof PDFName ? [textAt(dict, 'Filter')] : listAt(dict, 'Filter').map(nameOf);
        return [
          ...used.filter((name) => !filters.includes(name)).map((name) => `filter ${name}`),
          ...['F', 'FFilter', 'FDecodeParms']
            .filter((key) => entry(dict, key))
            .map((key) => `stream with ${key}`),
        ];
      }),
  },
  {
    id: 'no-actions',
    clause: '19005-3, 6.5.1 and 6.5.2',
    demands: 'nothing happens by itself: no scripts, no launching, no actions on events',
    faults: ({ catalog, dictionaries }) => [
      ...['OpenAction', 'AA'].filter((key) => entry(catalog, key)).map((key) => `catalog has ${key}`),
      ...unless(!entry(dictionaryAt(catalog, 'Names'), 'JavaScript'), 'scripts are named'),
      ...dictionaries
        .filter((found) => ['AA', 'JS'].some((key) => entry(found, key)))
        .map((found) => `acts by itself: ${found}`),
      ...dictionaries
        .filter((found) => textAt(found, 'Type') === 'Action' && !actions.includes(textAt(found, 'S')))
        .map((found) => `action ${found}`),
    ],
  },
  {
    id: 'output-intent',
    clause: '19005-3, 6.2.3',
    demands: 'one output intent for archives with an RGB colour profile inside',
    faults: ({ catalog }) => {
      const intents = listAt(catalog, 'OutputIntents').filter((object) => object instanceof PDFDict);
      const [intent] = intents;
      const profile = contentOf(entry(intent, 'DestOutputProfile'));
      return [
        ...unless(intents.length === 1, `${intents.length} output intents`),
        ...unless(textAt(intent, 'S') === 'GTS_PDFA1', 'not GTS_PDFA1'),
        ...unless(textAt(dictionaryAt(intent, 'DestOutputProfile'), 'N') === '3', 'not three colours'),
        ...unless(profile.slice(36, 40) === 'acsp', 'no ICC profile'),
        ...unless(['mntr', 'prtr', 'scnr', 'spac'].includes(profile.slice(12, 16)), 'profile of no device'),
        ...unless(profile.slice(16, 20) === 'RGB ', 'profile is not RGB'),
        ...unless([2, 4].includes(profile.charCodeAt(8)), 'profile of another version'),
      ];
    },
  },
  {
    id: 'no-other-presentation',
    clause: '19005-3, 6.9 to 6.11',
    demands: 'no layers, no other presentations, no demands on the reader',
    faults: ({ catalog, pages }) => [
      ...['OCProperties', 'Requirements'].filter((key) => entry(catalog, key)),
      ...unless(!entry(dictionaryAt(catalog, 'Names'), 'AlternatePresentations'), 'AlternatePresentations'),
      ...unless(!pages.some(({ dictionary }) => entry(dictionary, 'PresSteps')), 'PresSteps'),
    ],
  },
  {
    id: 'no-annotations',
    clause: '19005-3, 6.3',
    demands: 'no annotations: a report has no links and no forms',
    faults: ({ pages, catalog }) => [
      ...unless(!pages.some(({ dictionary }) => entry(dictionary, 'Annots')), 'a page has annotations'),
      ...unless(!entry(catalog, 'AcroForm'), 'there is a form'),
    ],
  },
];

const nameOf = (object: object): string => (object instanceof PDFName ? object.decodeText() : String(object));

/**
 * Reads the text of an uncompressed PDF back, page by page, through the ToUnicode maps of its fonts: what a
 * reader's program would copy, marked content that only decorates included.
 */
export function pdfPages(bytes: Uint8Array): string[] {
  const source = Buffer.from(bytes).toString('latin1');
  const objects = readObjects(source);
  const fonts = new Map<string, Map<number, string>>();
  for (const body of objects.values()) {
    for (const [, name, id] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const unicode = /\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(id)) ?? '');
      if (unicode && !fonts.has(name!)) fonts.set(name!, readMap(objects.get(Number(unicode[1])) ?? ''));
    }
  }
  return pageBodies(objects).map((page) => readText(contentsOf(objects, page), fonts));
}

/** Drawing operators of one page. */
export function pageContent(bytes: Uint8Array, page = 0): string {
  const objects = readObjects(Buffer.from(bytes).toString('latin1'));
  return contentsOf(objects, pageBodies(objects)[page]!);
}

function readObjects(source: string): Map<number, string> {
  const found = [...source.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)];
  return new Map(found.map(([, id, body]) => [Number(id), body!]));
}

function pageBodies(objects: Map<number, string>): string[] {
  const pages = [...objects.values()].find((body) => /\/Type \/Pages\b/.test(body))!;
  const kids = /\/Kids \[([^\]]*)\]/.exec(pages)![1]!;
  return [...kids.matchAll(/(\d+) 0 R/g)].map(([, id]) => objects.get(Number(id))!);
}

function contentsOf(objects: Map<number, string>, page: string): string {
  return objects.get(Number(/\/Contents (\d+) 0 R/.exec(page)![1])) ?? '';
}

function readMap(body: string): Map<number, string> {
  const map = new Map<number, string>();
  for (const [, first, , list] of body.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/g)) {
    [...list!.matchAll(/<([0-9a-f ]*)>/g)].forEach(([, hex], index) => {
      const units = hex!.replaceAll(' ', '').match(/.{4}/g) ?? [];
      const text = String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16)));
      map.set(Number.parseInt(first!, 16) + index, text);
    });
  }
  return map;
}

function readText(content: string, fonts: Map<string, Map<number, string>>): string {
  let map = new Map<number, string>();
  const parts: string[] = [];
  for (const [, font, array] of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (font) map = fonts.get(font) ?? new Map();
    else parts.push(...[...array!.matchAll(/<([0-9a-f]*)>/g)].map(([, hex]) => decode(hex!, map)), '\n');
  }
  return parts.join('');
}

function decode(hex: string, map: Map<number, string>): string {
  return (hex.match(/.{4}/g) ?? []).map((code) => map.get(Number.parseInt(code, 16)) ?? '?').join('');
}

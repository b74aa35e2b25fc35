/** Seen wherever a hostile text is shown, however much of it is taken away. */
export const mark = 'Quillwort';

/** What steers a terminal, reorders a line or hides in it; line feeds are the program's own. */
export const steering =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
  /[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u206f]|[\u{e0000}-\u{e007f}]/u;

const esc = '\u001b';

/** Texts that try to be more than text, by what they try. */
export const hostileTexts: Record<string, string> = {
  'terminal colours': `${esc}[31m${mark}${esc}[0m${esc}[2J${esc}[1;1H`,
  'a link of the terminal': `${esc}]8;;https://example.invalid${esc}\\${mark}${esc}]8;;${esc}\\`,
  'a title of the terminal, and its bell': `${esc}]0;gone\u0007${mark}\u0007\u0008\u007f`,
  'controls of one byte': `\u009b31m${mark}\u009d0;x\u009c\u0085\u0090`,
  'HTML that runs': `<script>alert(1)</script><img src=x onerror=alert(1)>${mark}`,
  'the end of a script': `</script><!-- ${mark} --> </style>]]>&lt;`,
  'an attribute that ends': `" onmouseover="alert(1)" x='${mark}`,
  'a formula': `=HYPERLINK("https://example.invalid";"${mark}")`,
  'a formula with a plus': `+1+1,=2+2 ${mark}`,
  'a formula with a minus': `-2+3+cmd|' /C calc'!A0 ${mark}`,
  'a formula with an at': `@SUM(1;2) ${mark}`,
  'a formula behind a tab': `\t=1+1 ${mark}`,
  'a formula behind a separator': `${mark};=1+1;"=2+2`,
  'a right-to-left override': `\u202e${mark}\u202c\u2066x\u2069\u200f`,
  'signs without width': `Q\u200bu\u200ci\u200dl\u2060lwort\ufeff\u00ad`,
  'tags without a shape': `${mark}\u{e0041}\u{e007f}\u180e\u206a`,
  'the syntax of templates': `{{question}} ${mark} {{#each}} ::: when always ::: {{`,
  Markdown: `**${mark}** [x](javascript:alert(1)) \`code\` | a | b | ![i](x)`,
  'lines and paragraphs': `${mark}\n::: caution\n\n## heading\u2028x\u2029y`,
  'a word without an end': `${mark}${'W'.repeat(60)}`,
  'Hebrew and Arabic': `${mark} שלום עולם مرحبا بالعالم`,
  'signs without a glyph': `${mark} 漢字 🦢👨‍👩‍👧 𓀀`,
  'marks upon marks': `${mark}${'\u0301\u0337\u0489'.repeat(15)}`,
  'names of objects': `__proto__ constructor ${mark} %s %n \${x} \\u0000`,
};

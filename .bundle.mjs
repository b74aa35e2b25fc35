import { build } from 'rolldown';

// The program and its helper thread, from hundreds of modules into a few dozen files, which load in half the time.
// pdfkit stays where npm put it: it reads files that lie beside it.
await build({
  input: ['dist/cli/main.js', 'dist/app/thread.js'],
  platform: 'node',
  external: [/^node:/, 'pdfkit'],
  output: { dir: 'dist/program', format: 'esm', cleanDir: true, comments: { legal: true } },
});

// The script of the HTML page, which is carried in the page itself.
await build({
  input: 'dist/page/main.js',
  platform: 'browser',
  output: { file: 'dist/program/page.js', format: 'iife', strict: true },
});

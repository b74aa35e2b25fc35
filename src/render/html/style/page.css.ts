import { family } from './faces.js';

/** How the page looks. Everything narrow first; what needs room comes with it. */
export const pageStyle = `
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%;scroll-padding-top:1rem}
body{margin:0;background:var(--paper);color:var(--ink);font:1.0625rem/1.5 ${family};overflow-wrap:anywhere}
a{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.skip{position:absolute;left:-999rem}
.skip:focus{left:1rem;top:1rem;padding:.5rem 1rem;background:var(--paper);z-index:1}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.page{max-width:58rem;margin:0 auto;padding:0 1rem 3rem}
h1,h2,h3,h4{line-height:1.25;text-wrap:balance;break-after:avoid}
h1{font-size:clamp(1.5rem,1.1rem + 1.8vw,2.1rem);margin:.3rem 0 .8rem}
h2{font-size:1.5rem;margin:0 0 1rem}
main>section:first-child h2{font-size:1.3rem;margin-top:2rem;color:var(--accent)}
main>section:first-child h3{color:inherit}
h3{font-size:1.15rem;margin:2rem 0 .6rem;color:var(--accent)}
h4{font-size:1rem;margin:1.5rem 0 .4rem}
p,ul,ol,dl{margin:.7rem 0}
li{margin:.3rem 0}
ol,ul{padding-left:1.5rem}
ol>li::marker{color:var(--accent);font-weight:600}
code{font:.92em ui-monospace,monospace;background:var(--band);padding:.1em .3em;border-radius:3px}
.small,figcaption,.date{font-size:.875rem;line-height:1.45;color:var(--muted)}
.lead{font-size:1.1rem;color:var(--muted)}
.answer{font-size:1.25rem;font-weight:600;line-height:1.4;margin:1.2rem 0;padding:1rem 1.2rem;background:var(--band);border-left:5px solid var(--accent);text-wrap:pretty}
header{padding-top:2rem}
header>:first-child{margin-top:0}
main>section{margin-top:3.5rem;padding-top:1.2rem;border-top:1px solid var(--rule)}
main>section:first-child{margin-top:0;padding-top:0;border:0}
.part{margin:4.5rem 0 -2.5rem;font-size:.875rem;font-weight:600;letter-spacing:.08em;text-transform:uppercase;color:var(--muted)}
nav{margin:.5rem 0;font-size:.9375rem}
nav summary{cursor:pointer;font-weight:600;padding:.4rem 0}
nav ol{list-style:none;margin:.2rem 0 1rem;padding:0}
nav li{margin:0}
nav a{display:block;padding:.3rem 0;text-decoration:none}
nav a:hover{text-decoration:underline}
nav p{margin:.8rem 0 .2rem;color:var(--muted);font-size:.8125rem}
footer{margin-top:4rem;padding-top:1rem;border-top:1px solid var(--hairline);font-size:.875rem;color:var(--muted)}
img{max-width:100%;height:auto}
.table{margin:1rem 0}
.scroll{overflow-x:auto;overflow-wrap:normal;background:linear-gradient(to right,var(--paper) 40%,transparent) left,linear-gradient(to left,var(--paper) 40%,transparent) right,linear-gradient(to right,var(--muted),transparent) left,linear-gradient(to left,var(--muted),transparent) right;background-size:2.4rem 100%,2.4rem 100%,.8rem 100%,.8rem 100%;background-repeat:no-repeat;background-attachment:local,local,scroll,scroll}
table{width:100%;border-collapse:collapse;font-size:.875rem;line-height:1.4;font-variant-numeric:tabular-nums}
table.compact{font-size:.8125rem}
caption{text-align:left;font-weight:600;padding-bottom:.4rem}
th,td{padding:.4rem .45rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--hairline);unicode-bidi:isolate}
.compact th,.compact td{padding:.22rem .5rem}
th:first-child,td:first-child{padding-left:.3rem}
thead th{vertical-align:bottom;color:var(--muted);border-bottom-color:var(--rule);line-height:1.25}
tbody th{font-weight:inherit;min-width:7.5em}
tbody th.right,.weighing tbody th{min-width:0}
.scroll .left{min-width:5.5em}
.unit{display:block;font-weight:400;white-space:nowrap}
.right{text-align:right;overflow-wrap:normal}
.figure{white-space:nowrap}
.centre{text-align:center}
.good{color:var(--good)}
.bad{color:var(--bad)}
.muted{color:var(--muted)}
.highlighted>*{background:var(--band)}
.group th{padding-top:1rem;font-weight:600;color:var(--accent);border-bottom-color:var(--rule)}
figure{margin:2rem 0;break-inside:avoid}
.question{margin:0 0 .6rem;font-weight:600}
figcaption{margin-top:.6rem}
.picture img{max-height:19mm;max-width:100%;width:auto;height:auto}
svg{display:block;width:100%;height:auto;font-family:${family}}
figure .wide{display:none}
figure .narrow{max-width:30rem}
.narrow text{paint-order:stroke;stroke-linejoin:round}
.narrow .role-axis-label{stroke:var(--paper);stroke-width:3px}
.caution{margin:.7rem 0;padding:.6rem 1rem .7rem;border-left:5px solid var(--note-bar);background:var(--note-band);break-inside:avoid}
.caution p{margin:0 0 .3rem}
.caution .severity,.caution .severity strong{color:var(--note-word)}
.caution .severity span{font-weight:600;white-space:nowrap}
.caution .severity strong:not(:last-child)::after{content:":"}
.caution.caution{font-size:.9375rem}
.severe{border-color:var(--severe-bar);background:var(--severe-band)}
.severe .severity,.severe .severity strong{color:var(--severe-word)}
.caution:not(.severe,.note){border-color:var(--caution-bar);background:var(--caution-band)}
.caution:not(.severe,.note) .severity,.caution:not(.severe,.note) .severity strong{color:var(--caution-word)}
.facts{display:grid;gap:0 1.5rem;font-size:.875rem}
.facts>div{display:flex;gap:1rem;justify-content:space-between;border-bottom:1px solid var(--hairline);padding:.25rem 0}
.facts dt{color:var(--muted)}
.facts dd{margin:0;text-align:right;flex:none;max-width:62%}
.facts dt{min-width:0}
.calculation{padding:.5rem 0;border-bottom:1px solid var(--hairline);font-size:.9375rem;font-variant-numeric:tabular-nums;break-inside:avoid}
.calculation p{margin:0}
.page-break{break-before:page}
fieldset{margin:0 0 .6rem;padding:0;border:0;min-width:0}
legend{padding:0;margin-bottom:.25rem;font-weight:600}
small{font-size:.875rem;font-weight:400;color:var(--muted)}
.steps{display:flex;flex-wrap:wrap;border:1px solid var(--rule);border-radius:6px;overflow:clip;overflow-clip-margin:6px;width:fit-content}
.steps label{position:relative;flex:1 0 auto;cursor:pointer}
.steps input{position:absolute;inset:0;opacity:0;margin:0;cursor:pointer}
.steps span{display:block;padding:.25rem .6rem;text-align:center;font-size:.9375rem}
.steps label:not(:first-child) span{border-left:1px solid var(--hairline)}
.steps :checked+span{background:var(--accent);color:var(--paper);font-weight:600}
.steps :focus-visible+span{outline:3px solid var(--accent);outline-offset:2px;position:relative;z-index:1}
.limits legend h3{margin:1rem 0 .4rem}
.limits label{display:flex;align-items:baseline;gap:.5rem;padding:.2rem 0;cursor:pointer}
.limits input{width:1.05rem;height:1.05rem;margin:0;flex:none;accent-color:var(--accent);transform:translateY(.15rem)}
button{font:inherit;color:var(--accent);background:none;border:1px solid var(--accent);border-radius:6px;padding:.35rem .9rem;cursor:pointer}
button:hover{background:var(--band)}
.weighing .name{font-weight:600}
.weighing .answer{font-size:1.1rem;margin-bottom:.8rem}
.bar{display:none}
@media (min-width:46rem){
.page{padding-inline:2rem}
figure .wide{display:block}
figure .narrow{display:none}
.facts.many{grid-template-columns:1fr 1fr}
.caution{display:grid;grid-template-columns:9rem 1fr;gap:0 1rem}
.caution .severity strong,.caution .severity span{display:block}
.caution .severity strong:not(:last-child)::after{content:none}
.caution .severity span{white-space:normal}
.calculation{display:grid;grid-template-columns:2.2fr 3fr 3fr 1.5fr;gap:.1rem 1.2rem}
.calculation .small{grid-column:1/-1}
.choices{display:grid;grid-template-columns:3fr 2fr;gap:0 2rem}
.limits legend h3{margin-top:2rem}
.score{min-width:8rem}
.bar{display:block;height:4px;margin-top:.2rem;background:var(--accent);border-radius:2px}
}
@media (min-width:57rem),print{
.beside{display:grid;gap:0 2rem}
.beside>div{min-width:0}
}
@media screen and (min-width:80rem){
.page{display:grid;grid-template-columns:15rem minmax(0,58rem);gap:0 3.5rem;max-width:80rem}
.page>*{grid-column:2}
.page>nav{grid-column:1;grid-row:1/4;margin:0}
nav details{position:sticky;top:0;max-height:100vh;overflow-y:auto;padding:2rem .3rem 2rem 0}
}
@supports selector(::details-content){
@media screen and (min-width:80rem){
nav summary{display:none}
nav ::details-content{content-visibility:visible;display:block;block-size:auto}
}
}
@media print{
@page{margin:16mm 15mm}
html{font-size:9.5pt}
body{font-size:1rem}
.page{max-width:none;padding:0}
nav,.skip,.weighing{display:none}
th,td{padding:.2rem .3rem}
.scroll .left{min-width:0}
tr,dl>div{break-inside:avoid}
thead{display:table-header-group}
.scroll{overflow:visible;background:none}
main>section{margin-top:0;border:0}
main>section.starts-page:not(:first-child){break-before:page}
.part{display:none}
*{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
`;

/** Least width of a column in a table that scrolls, in letters of the table. */
const columnWidth = 5.4;

/** Rules for what stands in this page only: shares of columns beside each other, and widths of wide tables. */
export function shareRules(shares: Iterable<string>): string {
  const rules = [...shares].sort().map((name) => {
    const columns = name.split('-').map((share) => `${share.replace('_', '.')}fr`);
    return `.shares-${name}{grid-template-columns:${columns.join(' ')}}`;
  });
  const tables = Array.from({ length: 17 }, (_, index) => index + 4).map(
    (count) => `.columns-${count}{min-width:${(count * columnWidth).toFixed(1)}em}`,
  );
  // Beside something else a table has no room to ask for: its figures keep together by themselves.
  const beside = '@media (min-width:57rem){\n.beside table{min-width:0}\n}';
  return `@media (min-width:57rem),print{\n${rules.join('\n')}\n}\n@media screen{\n${tables.join('\n')}\n}\n${beside}`;
}

import {test} from 'vitest';
import {readdirSync,readFileSync} from 'node:fs';
import {readStudy} from '../../src/input/read-study.js';
import {readAssumptions} from '../../src/input/read-assumptions.js';
import {formatIssue} from '../../src/problem/format-issue.js';
import {countFigures} from '../../src/input/count-figures.js';
test('demo',()=>{
 const dir='data-demo/lantern-parade/';
 const files=readdirSync(dir).filter(f=>f.endsWith('.csv')).map(name=>({name,bytes:new Uint8Array(readFileSync(dir+name))}));
 const t0=performance.now();
 const a=readAssumptions();
 const t1=performance.now();
 const r=readStudy(files,a,['feature.mass=900 g','worm-relay.mass=0.3 kg']);
 console.log(t1-t0,performance.now()-t1);
 console.log(r.issues.map(formatIssue).join('\n'));
 if(r.ok){ const {provenance,candidates,...rest}=r.value; console.log(JSON.stringify(rest,null,1)); console.log(JSON.stringify(candidates[5],null,1)); console.log(JSON.stringify(candidates[0]));
 for(const p of provenance) console.log([p.path,p.field,p.origin,p.written,p.shown,p.value,JSON.stringify(p.spread),p.basis,p.place&&p.place.line].join(' | '));
 console.log(countFigures(r.value));}
});

import {test} from 'vitest';
import {goodFiles,readFiles} from './good-study.js';
test('perf',()=>{
  const head=(goodFiles['candidates.csv'] as string);
  const rows=Array.from({length:9990},(_, i)=>`w${i},worm-gearmotor,12 V,15 rpm,60 kg·cm,,2.4 A,,260 g`).join('\n');
  const bad=Array.from({length:9990},(_, i)=>`w${i},worm-gearmotor,12,15 r,60 kg,5,2.4 C,6,260 gg`).join('\n');
  let t=performance.now(); let r=readFiles({...goodFiles,'candidates.csv':head+rows+'\n'}); console.log(r.ok, performance.now()-t);
  t=performance.now(); r=readFiles({...goodFiles,'candidates.csv':head+bad+'\n'}); console.log(r.ok, r.issues.length, performance.now()-t);
  t=performance.now(); r=readFiles({...goodFiles,'packs.csv':(goodFiles['packs.csv'] as string)+`p2,"${'x,'.repeat(9e6)}",lipo,2,2 Ah,1 g\n`}); console.log(r.ok, r.issues.length, performance.now()-t);
  t=performance.now(); r=readFiles({...goodFiles,'packs.csv':','.repeat(19e6)}); console.log(r.ok, r.issues.length, performance.now()-t);
  t=performance.now(); r=readFiles({...goodFiles,'packs.csv':'a,'.repeat(9e6)}); console.log(r.ok, r.issues.length, performance.now()-t);
});

import { test } from 'vitest';
import { starterShelf, wholeShelf } from '../../src/pigment/starter.ts';
import { drape } from '../../src/drapery/garment.ts';
import { chroma } from '../../src/colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../../src/colour/oklab.ts';
import type { GarmentWish } from '../../src/drapery/fold.ts';
const f=(l:readonly number[])=>l.map(v=>v.toFixed(1).padStart(6)).join(' ');
export function show(w: GarmentWish, s=starterShelf()) {
    const t=performance.now();
    const g = drape(w, s);
    if(!g.ok) { console.log(w.name, JSON.stringify(g.fault)); return; }
    const c=g.value;
    let out=`${w.name} | ${w.way} | ${w.stuff} ${(performance.now()-t).toFixed(0)}ms black ${c.black.why} ${JSON.stringify(c.blackLoss)} deepest ${c.deepest}\n`;
    for (const x of [...c.folds, ...(c.reflected?[c.reflected]:[])]) out+=`  ${x.step.padEnd(15)} wish ${f(x.wish)} got ${f(x.lab)} C ${chroma(x.lab).toFixed(1)} h ${oklabHueDeg(oklabOfLab(x.lab))?.toFixed(0)} dE ${x.deltaE00.toFixed(2)} ${x.glaze?`[${x.glaze.pigment} ${x.glaze.filmMm*1000}um over ${f(x.mixture.lab)}] `:''}${x.mixture.parts.map(p=>p.parts+' '+p.pigment).join(' + ')}\n`;
    console.log(out+c.remarks.join('\n'));
}
test('m', () => {
  show({"name":"cloth","lab":[25.42746508719806,5.282511038436077,5.5837362214384285],"stuff":"velvet","even":false,"way":"deepened in its own hue","neighbour":[5.000000000000007,89.99999999999983,1.1677236465389795e-230]});
  show({"name":"cloth","lab":[40.55176008866232,-2.899524958546007,2.902502979497612],"stuff":"satin","even":true,"way":"as nature had it","ladder":[[97.99999999999991,89.99999999999991,-1.0197970015766353e-13],[97.99999999999987,1.7551672757086708e-241,0],[40.55176008866232,-2.899524958546007,2.902502979497612],[40.55176008866232,-2.899524958546007,2.902502979497612],[33.5025071335353,-5.8400670188277495,-13.563883526405707],[9.276327244603719,5e-323,0]]});
}, 120000);

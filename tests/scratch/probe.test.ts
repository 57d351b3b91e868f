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
  show({name:'red glaze',lab:[40,40,20],way:'underpaint and glaze',stuff:'satin'});
  show({name:'white',lab:[90,0,4],way:'deepened in its own hue',stuff:'linen',neighbour:[50,30,20]});
  show({name:'green glaze',lab:[50,-22,30],way:'underpaint and glaze',glaze:'yellow_lake',stuff:'satin'}, wholeShelf());
}, 120000);

import { BarePegs } from '../drawn/BarePegs.tsx';
import { gathering } from '../gathering.ts';
import { hrefOf, route } from '../route.ts';
import { Soon } from '../Soon.tsx';
import { GatheringLine } from '../walk/WalkScreen.tsx';
import { PLACE_NAMES, say } from '../words/frame.ts';
import { Bench } from './Bench.tsx';
import { KeepBar, Onward, WordsForm } from './Keep.tsx';
import { HarmonyMix } from './mix/BenchMix.tsx';
import { Photograph } from './Photograph.tsx';
import { Standing } from './Standing.tsx';
import { gatherAnew } from './sight/gathered.ts';
import { HandMarks } from './sight/HandMarks.tsx';
import { look } from './sight/look.ts';
import { kept, name, specimen, stage, studied } from './state.ts';
import { VariantRows } from './vary/VariantRows.tsx';
import { Wall } from './Wall.tsx';

/** Screen of one harmony: photograph, cloths, mixtures and variants. */
export function HarmonyScreen() {
  const { open } = route.value;
  if (open === null || stage.value === 'empty')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{PLACE_NAMES.harmony}</h1>
        <BarePegs />
        <p class="lead">{say.harmonyEmpty}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('walk')}>
            {say.toWalk}
          </a>
          <a class="button" href={hrefOf('book')}>
            {say.toBook}
          </a>
        </p>
      </section>
    );
  if (stage.value === 'missing')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{PLACE_NAMES.harmony}</h1>
        <p class="lead">{say.notFound}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('book')}>
            {say.toBook}
          </a>
        </p>
      </section>
    );
  const colours = studied.value;
  return (
    <section class="page harmony has-bar">
      <div class="title">
        <h1 tabIndex={-1}>{name.value || say.unnamed}</h1>
        {colours.length > 0 && <KeepBar />}
      </div>
      <div class="sight">
        <GatheringLine />
        <Photograph />
        {colours.length > 0 && (
          <Soon>
            <Wall />
          </Soon>
        )}
      </div>
      {colours.length === 0 && !gathering.value && specimen.value && (
        <p class="main-actions">
          <button type="button" class="main" onClick={() => gather()}>
            {say.gatherAgain}
          </button>
        </p>
      )}
      {colours.length > 0 && (
        <Soon>
          <Gathered />
          <Bench />
          <HarmonyMix />
          <VariantRows />
          <Standing />
          <WordsForm />
          <Onward />
        </Soon>
      )}
    </section>
  );
}

/** Number of colours, manual corrections, and remarks on the gathering. */
function Gathered() {
  return (
    <>
      {!kept.value && specimen.value && <HowMany now={studied.value.length} />}
      <HandMarks />
      <Remarks />
    </>
  );
}

const gather = (colours?: number) => {
  void gatherAnew(colours === undefined ? {} : { wanted: colours });
};

function HowMany({ now }: { now: number }) {
  const busy = gathering.value !== null;
  return (
    <p class="how-many">
      <button
        type="button"
        class="quiet"
        disabled={busy || now <= 1}
        onClick={() => gather(now - 1)}
      >
        {say.fewer}
      </button>
      <button
        type="button"
        class="quiet"
        disabled={busy || now >= 7}
        onClick={() => gather(now + 1)}
      >
        {say.more}
      </button>
    </p>
  );
}

function Remarks() {
  const remarks = look.value.remarks;
  if (remarks.length === 0) return null;
  return (
    <ul class="remarks">
      {remarks.map((remark) => (
        <li key={remark}>{remark}</li>
      ))}
    </ul>
  );
}

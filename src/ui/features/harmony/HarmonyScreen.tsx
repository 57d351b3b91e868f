import { DeferredContent } from '../../components/DeferredContent.tsx';
import { EmptyWall } from '../../components/drawn/EmptyWall.tsx';
import {
  harmonyColours,
  loadingStage,
  name,
  savedHarmony,
  specimen,
} from '../../state/harmony/current-harmony.ts';
import { regather } from '../../state/harmony/gather-again.ts';
import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';
import { gathering } from '../../state/photograph-import.ts';
import { hrefOf, route } from '../../state/route.ts';
import { PLACE_NAMES, sharedTexts } from '../../texts/shared-texts.ts';
import { GatheringLine } from '../walk/WalkScreen.tsx';
import { HarmonyRelations } from './HarmonyRelations.tsx';
import { HungHarmony } from './HungHarmony.tsx';
import { ManualCorrectionList } from './ManualCorrectionList.tsx';
import { HarmonyMixingTools } from './MixtureTools.tsx';
import { PhotographPane } from './PhotographPane.tsx';
import { HarmonyNextSteps, NameAndNoteForm, SaveBar } from './SaveHarmony.tsx';
import { SelectedColour } from './SelectedColour.tsx';
import { VariantRows } from './VariantRows.tsx';

/** Screen of one harmony: photograph, cloths, mixtures and variants. */
export function HarmonyScreen() {
  const { open } = route.value;
  if (open === null || loadingStage.value === 'empty')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{PLACE_NAMES.harmony}</h1>
        <EmptyWall />
        <p class="lead">{sharedTexts.harmonyEmpty}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('walk')}>
            {sharedTexts.toWalk}
          </a>
          <a class="button" href={hrefOf('book')}>
            {sharedTexts.toBook}
          </a>
        </p>
      </section>
    );
  if (loadingStage.value === 'missing')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{PLACE_NAMES.harmony}</h1>
        <p class="lead">{sharedTexts.notFound}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('book')}>
            {sharedTexts.toBook}
          </a>
        </p>
      </section>
    );
  const colours = harmonyColours.value;
  return (
    <section class="page harmony has-bar">
      <div class="title">
        <h1 tabIndex={-1}>{name.value || sharedTexts.unnamed}</h1>
        {colours.length > 0 && <SaveBar />}
      </div>
      <div class="sight">
        <GatheringLine />
        <PhotographPane />
        {colours.length > 0 && (
          <DeferredContent>
            <HungHarmony />
          </DeferredContent>
        )}
      </div>
      {colours.length === 0 && !gathering.value && specimen.value && (
        <p class="main-actions">
          <button type="button" class="main" onClick={() => gather()}>
            {sharedTexts.gatherAgain}
          </button>
        </p>
      )}
      {colours.length > 0 && (
        <DeferredContent>
          <Gathered />
          <SelectedColour />
          <HarmonyMixingTools />
          <VariantRows />
          <HarmonyRelations />
          <NameAndNoteForm />
          <HarmonyNextSteps />
        </DeferredContent>
      )}
    </section>
  );
}

/** Number of colours, manual corrections, and remarks on the gathering. */
function Gathered() {
  return (
    <>
      {!savedHarmony.value && specimen.value && <HowMany now={harmonyColours.value.length} />}
      <ManualCorrectionList />
      <Remarks />
    </>
  );
}

const gather = (colours?: number) => {
  void regather(colours === undefined ? {} : { wanted: colours });
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
        {sharedTexts.fewer}
      </button>
      <button
        type="button"
        class="quiet"
        disabled={busy || now >= 7}
        onClick={() => gather(now + 1)}
      >
        {sharedTexts.more}
      </button>
    </p>
  );
}

function Remarks() {
  const remarks = gatheringSettings.value.remarks;
  if (remarks.length === 0) return null;
  return (
    <ul class="remarks">
      {remarks.map((remark) => (
        <li key={remark}>{remark}</li>
      ))}
    </ul>
  );
}

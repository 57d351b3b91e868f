import { useEffect } from 'preact/hooks';
import { hueDeg, hueTurnDeg } from '../../../colour/lab.ts';
import { type ClothRequest, DRAPERY_WAYS, type DraperyWay } from '../../../drapery/cloth-types.ts';
import { FABRICS } from '../../../drapery/fabric.ts';
import { glazesOf } from '../../../drapery/glaze-selection.ts';
import { SHIPPED_FORMULAS } from '../../../drapery/shipped-formulas.ts';
import { SelectField } from '../../components/SelectField.tsx';
import { clothFaultWords, clothResultOf, garmentOf } from '../../state/drapery/cloth-results.ts';
import {
  clothOfPart,
  type GarmentPart,
  MOST_GARMENTS,
  removeGarment,
  replaceGarment,
  type SchemeGarment,
  scheme,
  selectedGarment,
  withPart,
} from '../../state/drapery/drapery-scheme.ts';
import { colourTarget, selectedPart } from '../../state/drapery/part-selection.ts';
import { shelf } from '../../state/studio.ts';
import {
  DRAPERY_WAY_HELP,
  DRAPERY_WAY_NAMES,
  draperyTexts,
  FABRIC_NAMES,
  PART_NAMES,
} from '../../texts/drapery-texts.ts';
import { GarmentDrawing } from './GarmentDrawing.tsx';
import { LadderSteps } from './LadderSteps.tsx';

/**
 * Editor of the selected garment: its drawing, its fold model and fabric, and its ladder with the
 * piles.
 */
export function GarmentEditor() {
  const at = selectedGarment.value;
  const worn = scheme.value.garments[at];
  useEffect(() => {
    selectedPart.value = 'cloth';
  }, [at]);
  if (!worn) return null;
  const { wish } = worn;
  const shown: GarmentPart = clothOfPart(wish, selectedPart.value) ? selectedPart.value : 'cloth';
  const cloth = clothOfPart(wish, shown)!;
  const has = (['cloth', 'lining', 'trim'] as const).filter((one) => clothOfPart(wish, one));
  const set = (next: ClothRequest | null) => replaceGarment(at, withPart(worn, shown, next));
  const answer = clothResultOf(cloth);
  const trouble = clothFaultWords(cloth);
  return (
    <section class="drapery-bench" aria-labelledby="garment-heading">
      {scheme.value.garments.length > 1 && (
        <div class="drapery-hanging">
          <GarmentDrawing worn={worn} garment={garmentOf(worn)} />
        </div>
      )}
      <div class="drapery-side">
        <h2 id="garment-heading">{wish.name}</h2>
        {has.length > 1 && (
          <fieldset class="choice">
            <legend class="unseen">{draperyTexts.whichPart}</legend>
            {has.map((one) => (
              <label key={one}>
                <input
                  type="radio"
                  name="drapery-part"
                  checked={one === shown}
                  onChange={() => {
                    selectedPart.value = one;
                  }}
                />
                <span>{PART_NAMES[one]}</span>
              </label>
            ))}
          </fieldset>
        )}
        <ClothSettings key={`${at} ${shown}`} cloth={cloth} at={at} shown={shown} set={set} />
        <Parts worn={worn} at={at} shown={shown} />
      </div>
      <div class="drapery-ladder" aria-live="polite">
        {trouble && <p class="drapery-trouble">{trouble}</p>}
        {answer?.ok && <LadderSteps cloth={answer.value} />}
      </div>
    </section>
  );
}

function ClothSettings({
  cloth,
  at,
  shown,
  set,
}: {
  cloth: ClothRequest;
  at: number;
  shown: GarmentPart;
  set: (next: ClothRequest) => void;
}) {
  const others = scheme.value.garments.filter((_, i) => i !== at);
  const beside = others[0]?.wish;
  const { neighbour: _, ...alone } = cloth;
  const { glaze: _glaze, ...unglazed } = cloth;
  const answer = clothResultOf(cloth);
  return (
    <div class="drapery-wishes">
      {shown === 'cloth' && (
        <label class="drapery-name">
          {draperyTexts.garment}
          <input
            type="text"
            maxLength={80}
            value={cloth.name}
            onChange={(event) => {
              const name = event.currentTarget.value.trim();
              if (name) set({ ...cloth, name });
            }}
          />
        </label>
      )}
      <SelectField
        label={draperyTexts.way}
        options={DRAPERY_WAYS.filter((way) => way !== 'as nature had it' || cloth.ladder).map(
          (way) => [way, DRAPERY_WAY_NAMES[way]] as const,
        )}
        chosen={cloth.way}
        onChoose={(way) => set(withFoldModel(cloth, way))}
      >
        {DRAPERY_WAY_HELP[cloth.way]} {!cloth.ladder && draperyTexts.noLadder}
      </SelectField>
      <SelectField
        label={draperyTexts.stuff}
        options={FABRICS.map((stuff) => [stuff, FABRIC_NAMES[stuff]] as const)}
        chosen={cloth.stuff}
        onChoose={(stuff) => set({ ...cloth, stuff })}
      />
      <div class="drapery-checks">
        <Check
          label={draperyTexts.even}
          checked={cloth.even ?? false}
          onChange={(even) => set({ ...cloth, even })}
        />
        {(beside || cloth.neighbour) && (
          <Check
            label={draperyTexts.reflects(beside?.name ?? 'cloth beside it')}
            checked={cloth.neighbour !== undefined}
            onChange={(yes) => set(yes && beside ? { ...alone, neighbour: beside.lab } : alone)}
          />
        )}
        {(cloth.insistBlack || (answer?.ok && answer.value.black.barred.length > 0)) && (
          <Check
            label={draperyTexts.insist}
            checked={cloth.insistBlack ?? false}
            onChange={(insistBlack) => set({ ...cloth, insistBlack })}
          />
        )}
      </div>
      {cloth.way === 'underpaint and glaze' && (
        <SelectField
          label={draperyTexts.glazeOf}
          options={[
            ['', draperyTexts.glazeChosen] as const,
            ...glazesOf(shelf.value).map(({ pigment, label }) => [pigment, label] as const),
          ]}
          chosen={cloth.glaze ?? ''}
          onChoose={(pigment) => set(pigment === '' ? unglazed : { ...unglazed, glaze: pigment })}
        />
      )}
      {cloth.way === 'shot cloth' && (
        <button
          type="button"
          onClick={() => {
            colourTarget.value = { what: 'shadows', part: shown };
          }}
        >
          {draperyTexts.shadowsOf}
        </button>
      )}
    </div>
  );
}

function Check({
  label,
  checked,
  onChange,
}: {
  label: string;
  checked: boolean;
  onChange: (checked: boolean) => void;
}) {
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={checked}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      {label}
    </label>
  );
}

/**
 * Sets the fold model. Shot cloth without shadows takes the hue of the scheme that differs most, by
 * more than 40° and at least 8 L* darker; else a usual one.
 */
function withFoldModel(cloth: ClothRequest, way: DraperyWay): ClothRequest {
  if (way !== 'shot cloth' || cloth.shadows) return { ...cloth, way };
  const hue = hueDeg(cloth.lab) ?? 0;
  const far = scheme.value.garments
    .map(({ wish }) => wish.lab)
    .filter((lab) => lab[0] < cloth.lab[0] - 8)
    .map((lab) => ({ lab, turn: Math.abs(hueTurnDeg(hue, hueDeg(lab) ?? hue)) }))
    .filter(({ turn }) => turn > 40)
    .toSorted((x, y) => y.turn - x.turn);
  const usual =
    SHIPPED_FORMULAS.find(({ wish }) => wish.shadows)?.wish.shadows ?? ([30, 8, -18] as const);
  return { ...cloth, way, shadows: far[0]?.lab ?? usual };
}

/** Buttons that add or remove parts of a garment, and change its share. */
function Parts({ worn, at, shown }: { worn: SchemeGarment; at: number; shown: GarmentPart }) {
  const { wish, share } = worn;
  const many = scheme.value.garments.length;
  const pick = (what: 'garment' | GarmentPart) => {
    colourTarget.value = { what, part: shown };
  };
  return (
    <p class="drapery-parts">
      <button type="button" onClick={() => pick(shown)}>
        {draperyTexts.colourOf}
      </button>
      {!wish.lining && (
        <button type="button" onClick={() => pick('lining')}>
          {draperyTexts.addLining}
        </button>
      )}
      {!wish.trim && (
        <button type="button" onClick={() => pick('trim')}>
          {draperyTexts.addTrim}
        </button>
      )}
      {many < MOST_GARMENTS && (
        <button type="button" onClick={() => pick('garment')}>
          {draperyTexts.addGarment}
        </button>
      )}
      {many > 1 && (
        <>
          <button
            type="button"
            class="quiet"
            onClick={() => replaceGarment(at, { ...worn, share: share * 1.3 })}
          >
            {draperyTexts.more}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => replaceGarment(at, { ...worn, share: share / 1.3 })}
          >
            {draperyTexts.less}
          </button>
        </>
      )}
      {shown !== 'cloth' && (
        <button
          type="button"
          class="quiet"
          onClick={() => replaceGarment(at, withPart(worn, shown, null))}
        >
          {draperyTexts.removePart(shown)}
        </button>
      )}
      {many > 1 && (
        <button type="button" class="quiet" onClick={() => removeGarment(at)}>
          {draperyTexts.removeGarment}
        </button>
      )}
    </p>
  );
}

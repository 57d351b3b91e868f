import { useEffect } from 'preact/hooks';
import { hueDeg, hueTurnDeg } from '../../colour/lab.ts';
import { type ClothWish, DRAPERY_WAYS, type DraperyWay } from '../../drapery/fold.ts';
import { glazesOf } from '../../drapery/glaze.ts';
import { STUFFS } from '../../drapery/stuff.ts';
import { WORKED } from '../../drapery/worked.ts';
import { Choice } from '../shelf/Choice.tsx';
import { shelf } from '../studio.ts';
import { PART_NAMES, STUFF_NAMES, say, WAY_HELP, WAY_NAMES } from '../words/drapery.ts';
import { answered, garmentOf, troubleOf } from './cloths.ts';
import { Hanging } from './Hanging.tsx';
import { part, picking } from './picking.ts';
import { Steps } from './Steps.tsx';
import {
  chosen,
  MOST_GARMENTS,
  type Part,
  partOf,
  removeGarment,
  scheme,
  setWorn,
  type Worn,
  withPart,
} from './state.ts';

/**
 * Editor of the selected garment: its drawing, its fold model and fabric, and its ladder with the
 * piles.
 */
export function GarmentBench() {
  const at = chosen.value;
  const worn = scheme.value.garments[at];
  useEffect(() => {
    part.value = 'cloth';
  }, [at]);
  if (!worn) return null;
  const { wish } = worn;
  const shown: Part = partOf(wish, part.value) ? part.value : 'cloth';
  const cloth = partOf(wish, shown)!;
  const has = (['cloth', 'lining', 'trim'] as const).filter((one) => partOf(wish, one));
  const set = (next: ClothWish | null) => setWorn(at, withPart(worn, shown, next));
  const answer = answered(cloth);
  const trouble = troubleOf(cloth);
  return (
    <section class="drapery-bench" aria-labelledby="garment-heading">
      {scheme.value.garments.length > 1 && (
        <div class="drapery-hanging">
          <Hanging worn={worn} garment={garmentOf(worn)} />
        </div>
      )}
      <div class="drapery-side">
        <h2 id="garment-heading">{wish.name}</h2>
        {has.length > 1 && (
          <fieldset class="choice">
            <legend class="unseen">{say.whichPart}</legend>
            {has.map((one) => (
              <label key={one}>
                <input
                  type="radio"
                  name="drapery-part"
                  checked={one === shown}
                  onChange={() => {
                    part.value = one;
                  }}
                />
                <span>{PART_NAMES[one]}</span>
              </label>
            ))}
          </fieldset>
        )}
        <Wishes key={`${at} ${shown}`} cloth={cloth} at={at} shown={shown} set={set} />
        <Parts worn={worn} at={at} shown={shown} />
      </div>
      <div class="drapery-ladder" aria-live="polite">
        {trouble && <p class="drapery-trouble">{trouble}</p>}
        {answer?.ok && <Steps cloth={answer.value} />}
      </div>
    </section>
  );
}

function Wishes({
  cloth,
  at,
  shown,
  set,
}: {
  cloth: ClothWish;
  at: number;
  shown: Part;
  set: (next: ClothWish) => void;
}) {
  const others = scheme.value.garments.filter((_, i) => i !== at);
  const beside = others[0]?.wish;
  const { neighbour: _, ...alone } = cloth;
  const { glaze: _glaze, ...unglazed } = cloth;
  const answer = answered(cloth);
  return (
    <div class="drapery-wishes">
      {shown === 'cloth' && (
        <label class="drapery-name">
          {say.garment}
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
      <Choice
        label={say.way}
        options={DRAPERY_WAYS.filter((way) => way !== 'as nature had it' || cloth.ladder).map(
          (way) => [way, WAY_NAMES[way]] as const,
        )}
        chosen={cloth.way}
        onChoose={(way) => set(goingWay(cloth, way))}
      >
        {WAY_HELP[cloth.way]} {!cloth.ladder && say.noLadder}
      </Choice>
      <Choice
        label={say.stuff}
        options={STUFFS.map((stuff) => [stuff, STUFF_NAMES[stuff]] as const)}
        chosen={cloth.stuff}
        onChoose={(stuff) => set({ ...cloth, stuff })}
      />
      <div class="drapery-checks">
        <Check
          label={say.even}
          checked={cloth.even ?? false}
          onChange={(even) => set({ ...cloth, even })}
        />
        {(beside || cloth.neighbour) && (
          <Check
            label={say.reflects(beside?.name ?? 'cloth beside it')}
            checked={cloth.neighbour !== undefined}
            onChange={(yes) => set(yes && beside ? { ...alone, neighbour: beside.lab } : alone)}
          />
        )}
        {(cloth.insistBlack || (answer?.ok && answer.value.black.barred.length > 0)) && (
          <Check
            label={say.insist}
            checked={cloth.insistBlack ?? false}
            onChange={(insistBlack) => set({ ...cloth, insistBlack })}
          />
        )}
      </div>
      {cloth.way === 'underpaint and glaze' && (
        <Choice
          label={say.glazeOf}
          options={[
            ['', say.glazeChosen] as const,
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
            picking.value = { what: 'shadows', part: shown };
          }}
        >
          {say.shadowsOf}
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
function goingWay(cloth: ClothWish, way: DraperyWay): ClothWish {
  if (way !== 'shot cloth' || cloth.shadows) return { ...cloth, way };
  const hue = hueDeg(cloth.lab) ?? 0;
  const far = scheme.value.garments
    .map(({ wish }) => wish.lab)
    .filter((lab) => lab[0] < cloth.lab[0] - 8)
    .map((lab) => ({ lab, turn: Math.abs(hueTurnDeg(hue, hueDeg(lab) ?? hue)) }))
    .filter(({ turn }) => turn > 40)
    .toSorted((x, y) => y.turn - x.turn);
  const usual = WORKED.find(({ wish }) => wish.shadows)?.wish.shadows ?? ([30, 8, -18] as const);
  return { ...cloth, way, shadows: far[0]?.lab ?? usual };
}

/** Buttons that add or remove parts of a garment, and change its share. */
function Parts({ worn, at, shown }: { worn: Worn; at: number; shown: Part }) {
  const { wish, share } = worn;
  const many = scheme.value.garments.length;
  const pick = (what: 'garment' | Part) => {
    picking.value = { what, part: shown };
  };
  return (
    <p class="drapery-parts">
      <button type="button" onClick={() => pick(shown)}>
        {say.colourOf}
      </button>
      {!wish.lining && (
        <button type="button" onClick={() => pick('lining')}>
          {say.addLining}
        </button>
      )}
      {!wish.trim && (
        <button type="button" onClick={() => pick('trim')}>
          {say.addTrim}
        </button>
      )}
      {many < MOST_GARMENTS && (
        <button type="button" onClick={() => pick('garment')}>
          {say.addGarment}
        </button>
      )}
      {many > 1 && (
        <>
          <button
            type="button"
            class="quiet"
            onClick={() => setWorn(at, { ...worn, share: share * 1.3 })}
          >
            {say.more}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => setWorn(at, { ...worn, share: share / 1.3 })}
          >
            {say.less}
          </button>
        </>
      )}
      {shown !== 'cloth' && (
        <button
          type="button"
          class="quiet"
          onClick={() => setWorn(at, withPart(worn, shown, null))}
        >
          {say.removePart(shown)}
        </button>
      )}
      {many > 1 && (
        <button type="button" class="quiet" onClick={() => removeGarment(at)}>
          {say.removeGarment}
        </button>
      )}
    </p>
  );
}

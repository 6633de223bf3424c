import { PLANT_KINDS, type PlantKind } from '../../../core/plant.ts';
import { Field } from '../parts/Field.tsx';
import { LengthInput, typedUnit } from '../parts/LengthInput.tsx';
import { KIND_WORDS } from '../words/plant-words.ts';
import type { PlantDraft } from './plant-draft.ts';
import { StandField } from './StandField.tsx';

/** The entries that describe a plant; the same for adding and for changing one. */
export function PlantFields({
  draft,
  fields,
  onChange,
}: {
  draft: PlantDraft;
  fields: Readonly<Record<string, string>>;
  onChange: (draft: PlantDraft) => void;
}) {
  const set = (part: Partial<PlantDraft>) => onChange({ ...draft, ...part });
  return (
    <>
      <Field label="Name" help="What you call it on the bench." fault={fields.name}>
        {(wiring) => (
          <input
            {...wiring}
            value={draft.name}
            autoComplete="off"
            onChange={(event) => set({ name: event.target.value })}
          />
        )}
      </Field>
      <Field label="Kind" fault={fields.kind}>
        {(wiring) => (
          <select
            {...wiring}
            value={draft.kind}
            onChange={(event) => set({ kind: event.target.value as PlantKind })}
          >
            {PLANT_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {KIND_WORDS[kind]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Variety (may stay empty)" fault={fields.variety}>
        {(wiring) => (
          <input
            {...wiring}
            value={draft.variety}
            autoComplete="off"
            onChange={(event) => set({ variety: event.target.value })}
          />
        )}
      </Field>
      <Field
        label={`Pot rim, ${typedUnit()}`}
        help="Measure straight across the outside of the rim, edge to edge. It gives the photos their millimetres. Without it you get shape but no sizes."
        fault={fields.rimMm}
      >
        {(wiring) => (
          <LengthInput {...wiring} placeholderMm={130} mm={draft.rim} onChange={(rim) => set({ rim })} />
        )}
      </Field>
      <Field
        label="Show day (may stay empty)"
        help="The day the plant must be at its best. It is entered for the show of that day; classes and limits stand under Shows."
        fault={fields.showDay}
      >
        {(wiring) => (
          <input
            {...wiring}
            type="date"
            value={draft.showDay}
            onChange={(event) => set({ showDay: event.target.value })}
          />
        )}
      </Field>
      <StandField
        standId={draft.standId ?? ''}
        fault={fields.standId}
        onChoose={(standId) => set({ standId })}
      />
    </>
  );
}

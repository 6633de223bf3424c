import { placeWords } from '../../../core/turned/place-words.ts';
import { Field } from '../parts/Field.tsx';
import { degreeWords } from '../words/turn-words.ts';
import { markFromCameraDeg } from './taking-words.ts';
import { OFFERED_TURNS, OTHER, type TurnEntry, UNKNOWN } from './turn-entry.ts';

/** Which side faced the camera: by where the mark pointed, or in degrees. */
export function TurnField({
  entry,
  fault,
  onChange,
}: {
  entry: TurnEntry;
  fault?: string | undefined;
  onChange: (entry: TurnEntry) => void;
}) {
  const isOther = entry.choice === OTHER;
  return (
    <>
      <Field
        label="Turn of the pot"
        help="Seen from above with the camera at 6 o’clock. Turned clockwise, the degrees go up: a quarter turn is 90."
        fault={isOther ? undefined : fault}
      >
        {(wiring) => (
          <select
            {...wiring}
            value={entry.choice}
            onChange={(event) => onChange({ ...entry, choice: event.target.value })}
          >
            <option value={UNKNOWN}>Not known</option>
            {OFFERED_TURNS.map((turnDeg) => (
              <option key={turnDeg} value={String(turnDeg)}>
                {turnDeg === 0
                  ? '0°: mark to the camera'
                  : `${degreeWords(turnDeg)}: mark at ${placeWords(markFromCameraDeg(turnDeg))}`}
              </option>
            ))}
            <option value={OTHER}>Another, in degrees</option>
          </select>
        )}
      </Field>
      {isOther && (
        <Field label="Degrees, clockwise" fault={fault}>
          {(wiring) => (
            <input
              {...wiring}
              inputMode="decimal"
              value={entry.degrees}
              onChange={(event) => onChange({ ...entry, degrees: event.target.value })}
            />
          )}
        </Field>
      )}
    </>
  );
}

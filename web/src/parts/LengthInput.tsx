import { type ComponentProps, useState } from 'react';
import { MM_PER_INCH } from '../languages/inch.ts';
import { unitsChoice } from '../languages/reader.ts';

/** The unit that lengths are typed in. */
export function typedUnit(): 'mm' | 'in' {
  return unitsChoice.read() === 'inches' ? 'in' : 'mm';
}

/** The unit of the tape measure, for what is longer. */
export function typedTape(): 'cm' | 'in' {
  return unitsChoice.read() === 'inches' ? 'in' : 'cm';
}

/**
 * An entry for a length that the form keeps as typed millimetres, in the reader's unit.
 *
 * @param mm what the form holds, not yet read
 */
export function LengthInput({
  mm,
  onChange,
  placeholderMm,
  ...input
}: Omit<ComponentProps<'input'>, 'value' | 'onChange'> & {
  mm: string;
  onChange: (mm: string) => void;
  placeholderMm?: number;
}) {
  const isInches = typedUnit() === 'in';
  const shown = (value: string) => (isInches ? inchesOf(value) : value);
  // What is being typed stays as it is: "5." must not become "5" under the finger.
  const [typed, type] = useState({ words: shown(mm), mm });
  const words = typed.mm === mm ? typed.words : shown(mm);
  return (
    <input
      {...input}
      inputMode="decimal"
      {...(placeholderMm === undefined ? {} : { placeholder: `for example ${shown(String(placeholderMm))}` })}
      value={words}
      onChange={({ target: { value } }) => {
        const next = isInches ? mmOf(value) : value;
        type({ words: value, mm: next });
        onChange(next);
      }}
    />
  );
}

/** To a tenth of a millimetre; what is no number stays, so that the form can say so. */
function mmOf(inches: string): string {
  const value = Number(inches.trim().replace(',', '.'));
  return inches.trim() === '' || !Number.isFinite(value)
    ? inches
    : String(Math.round(value * MM_PER_INCH * 10) / 10);
}

function inchesOf(mm: string): string {
  const value = Number(mm.trim().replace(',', '.'));
  return mm.trim() === '' || !Number.isFinite(value)
    ? mm
    : String(Math.round((value / MM_PER_INCH) * 100) / 100);
}

import { useId } from 'react';
import styles from './Choices.module.css';

/** One of a few, side by side; the chosen one is underlined. */
export function Choices<Value extends string>({
  legend,
  legendHidden = false,
  options,
  chosen,
  onChoose,
}: {
  legend: string;
  legendHidden?: boolean;
  options: readonly { readonly value: Value; readonly words: string }[];
  chosen: Value;
  onChoose: (value: Value) => void;
}) {
  const name = useId();
  return (
    <fieldset className={styles.choices}>
      <legend className={legendHidden ? 'only-heard' : styles.legend}>{legend}</legend>
      {options.map(({ value, words }) => (
        <label key={value} className={styles.choice}>
          <input type="radio" name={name} checked={value === chosen} onChange={() => onChoose(value)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

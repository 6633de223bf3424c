import {
  LANGUAGES,
  type Language,
  languageChoice,
  readersLanguage,
  UNITS,
  type Units,
  unitsChoice,
} from '../languages/reader.ts';
import { Choices } from '../parts/Choices.tsx';

const UNITS_WORDS: Record<Units, string> = { metric: 'Millimetres', inches: 'Inches' };

/** The reader's language and units; the page opens anew with them. */
export function ReaderChoices() {
  const language = languageChoice.useValue();
  const units = unitsChoice.useValue();
  return (
    <section>
      <h2>Language and lengths</h2>
      <Choices<Language | 'device'>
        legend="Language"
        options={[
          { value: 'device', words: 'As the device wishes' },
          ...Object.entries(LANGUAGES).map(([value, words]) => ({ value: value as Language, words })),
        ]}
        chosen={language}
        onChoose={(value) => {
          languageChoice.write(value);
          openAnew();
        }}
      />
      {readersLanguage() !== 'en' && (
        <p>
          This translation is not reviewed yet: no grower who speaks the language has read it. Where it is
          unclear, the English text counts.
        </p>
      )}
      <Choices<Units>
        legend="Lengths"
        options={UNITS.map((value) => ({ value, words: UNITS_WORDS[value] }))}
        chosen={units}
        onChoose={(value) => {
          unitsChoice.write(value);
          openAnew();
        }}
      />
      {units === 'inches' && (
        <p>Numbers are given in inches and feet. Fields to fill in say which unit they take.</p>
      )}
    </section>
  );
}

/** What is drawn already keeps its words, so the page is fetched again; everything else is kept. */
function openAnew(): void {
  window.location.reload();
}

import styles from './AboutScreen.module.css';

/** Words of the trade and of this app, each said once; in the order in which a grower meets them. */
const WORDS: readonly (readonly [string, string])[] = [
  ['Mark', 'The stick or dot on the pot’s rim that fixes the direction: 6 o’clock, seen from above.'],
  ['Rim', 'The upper edge of the pot. Measured across once, it gives the photos their millimetres.'],
  ['Stand', 'The fixed place where you photograph: camera, backdrop, where the pot goes, the light’s side.'],
  ['View', 'One photo of a plant at one turn of the pot.'],
  ['Sitting', 'The views of one plant taken on one day: one, two, four or more.'],
  ['Canopy', 'All leaf, flower and stem; never pot, soil, label or support.'],
  ['Outline', 'The edge of the canopy as a photo shows it.'],
  ['Ball', 'The circle, or seen from all round the sphere, that the canopy should fill.'],
  ['Axis', 'The upright through the middle of the rim. Left and right are compared about it.'],
  ['Weak side', 'The side on which the canopy falls short of the ball.'],
  ['Long stem', 'A stem that stands outside the ball. Where it is broad it is called a shoulder.'],
  ['Cut mark', 'The yellow bar across a long stem where the knife would shorten it.'],
  ['Stop', 'To cut out a growing tip, so that the stem branches.'],
  ['Tip stop', 'A stop that takes the tip only.'],
  ['Deep stop', 'A stop that takes the stem further back.'],
  ['Break', 'A side shoot that grows after a stop.'],
  ['Season', 'The run from the first stop to the show.'],
  ['Show', 'The day on which the plant must be at its best.'],
  ['Plus-minus', 'How far a number may be off by chance. A change inside it is called no change.'],
];

/** The words that the screens use without explaining them each time. */
export function Glossary() {
  return (
    <section>
      <h2>Words</h2>
      <dl className={styles.words}>
        {WORDS.map(([word, meaning]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

import { describe, expect, it } from 'vitest';
import { interpreterOf } from '../../../web/src/languages/interpreter.ts';

const say = interpreterOf({
  and: 'und',
  leaf: 'Blatt',
  light: 'Licht',
  'Sent {0} of {1}': 'Von {1} sind {0} gesendet',
  '{0} photos': '{0} Fotos',
  '{0} photos are late': '{0} Fotos sind spät',
  'Turn the pot {0}.': 'Den Topf {0} drehen.',
  'a quarter clockwise': 'ein Viertel im Uhrzeigersinn',
  'Keep it dry.': 'Trocken halten.',
  '{0} Done': '{0} Fertig',
});

describe('an interpreter', () => {
  it('gives a text known whole', () => expect(say('Keep it dry.')).toBe('Trocken halten.'));

  it('puts values where the other language wants them', () =>
    expect(say('Sent 3 of 10')).toBe('Von 10 sind 3 gesendet'));

  it('interprets the values too', () =>
    expect(say('Turn the pot a quarter clockwise.')).toBe('Den Topf ein Viertel im Uhrzeigersinn drehen.'));

  it('takes the text that shares most words', () =>
    expect(say('4 photos are late')).toBe('4 Fotos sind spät'));

  it('goes sentence by sentence', () =>
    expect(say('Keep it dry. Turn the pot a quarter clockwise.')).toBe(
      'Trocken halten. Den Topf ein Viertel im Uhrzeigersinn drehen.',
    ));

  it('goes part by part of a list', () => expect(say('leaf, light and leaf')).toBe('Blatt, Licht und Blatt'));

  it('takes words for words, not for parts of words', () =>
    expect(interpreterOf({ '{0} at {1}': '{0} op {1}' })('Katharina')).toBe('Katharina'));

  it('takes places side by side for one value', () =>
    expect(interpreterOf({ 'Left: {0} {1} mm': 'Links: {0} {1} mm' })('Left: Old Bella 3 mm')).toBe(
      'Links: Old Bella 3 mm',
    ));

  it('does not take two sentences for the values of a few words', () =>
    expect(
      interpreterOf({ '{0} on {1}': '{0} am {1}', 'Cut it on {0}.': 'Am {0} schneiden.' })(
        'Keep. Cut it on Monday.',
      ),
    ).toBe('Keep. Am Monday schneiden.'));

  it('makes no other text of known words with an icon before them', () => {
    const sayShort = interpreterOf({
      '{0} on': '{0} am',
      'Potted on': 'Umgetopft',
      '{0} to {1}': '{0} bis {1}',
      'Set view {0} to {1}': 'Ansicht {0} auf {1} stellen',
    });
    expect(sayShort('\ue000 Potted on')).toBe('\ue000 Umgetopft');
    expect(sayShort('\ue000 Set view 2 to 90º')).toBe('\ue000 Ansicht 2 auf 90º stellen');
  });

  it('leaves the grower’s own words as written', () =>
    expect(
      interpreterOf({ 'Note, {0}.': 'Notiz, {0}.', 'six days': 'sechs Tage' })(
        'Note, Mo. \u2068$& for six days\u2069',
      ),
    ).toBe('Notiz, Mo. \u2068$& for six days\u2069'));

  it('ends a sentence that ends in a day with one dot', () =>
    expect(interpreterOf({ 'As of {0}.': 'Stand {0}.' })('As of So., 22. Nov..')).toBe(
      'Stand So., 22. Nov.',
    ));

  it('rather leaves a text than gives half of it', () =>
    expect(interpreterOf({ '{0} on {1}': '{0} am {1}', and: 'und' })('laid on boards and sand')).toBe(
      'laid on boards and sand',
    ));

  it('does not take the beginning of a sentence for a name', () => {
    const sayShort = interpreterOf({
      '{0} late': '{0} zu spät',
      '{0} days': '{0} Tage',
      '{0} to {1}': '{0} bis {1}',
    });
    for (const text of [
      'Later than that, some plants would be late',
      '\ue000its days',
      '3 May to 5 May: Read the schedule',
    ]) {
      expect(sayShort(text)).toBe(text);
    }
    expect(sayShort('Old regal late')).toBe('Old regal zu spät');
  });

  it('does not take what ends within a sentence for a value', () =>
    expect(
      interpreterOf({
        'Counted back from the show on {0}.': 'Zurückgerechnet von der Schau am {0}.',
        'It was {0} ago.': 'Es ist {0} her.',
      })('Counted back from the show on Monday. It was Tuesday ago.'),
    ).toBe('Zurückgerechnet von der Schau am Monday. Es ist Tuesday her.'));

  it('takes what a dot parts by itself', () =>
    expect(interpreterOf({ '{0} days': 'noch {0} Tage', leaf: 'Blatt' })('leaf · 3 days')).toBe(
      'Blatt · noch 3 Tage',
    ));

  it('knows each sentence of an entry', () =>
    expect(
      interpreterOf({ 'Look twice. Cut once.': 'Zweimal schauen. Einmal schneiden.' })('Cut once.'),
    ).toBe('Einmal schneiden.'));

  it('leaves the elements round a text where they are', () =>
    expect(say('\ue000 Keep it dry.')).toBe('\ue000 Trocken halten.'));

  it('lets a value be nothing', () => expect(say(' Done')).toBe(' Fertig'));

  it('gives back what it does not know', () => expect(say('Bella, from 12')).toBe('Bella, from 12'));

  it('takes signs of a text for themselves', () =>
    expect(interpreterOf({ 'Width (mm)? {0}': 'Breite (mm)? {0}' })('Width (mm)? 12')).toBe(
      'Breite (mm)? 12',
    ));

  it('hands on what no text knows, a day for one', () =>
    expect(
      interpreterOf({ 'since {0}': 'seit {0}' }, (value) => (value === '8 March' ? '8. März' : value))(
        'since 8 March',
      ),
    ).toBe('seit 8. März'));
});

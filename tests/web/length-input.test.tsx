import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, describe, expect, it } from 'vitest';
import { unitsChoice } from '../../web/src/languages/reader.ts';
import { LengthInput, typedUnit } from '../../web/src/parts/LengthInput.tsx';
import { readLengthMm } from '../../web/src/stand/length-entry.ts';

afterEach(() => unitsChoice.write('metric'));

const drawn = () =>
  renderToStaticMarkup(<LengthInput mm="130" placeholderMm={130} onChange={() => undefined} />);

describe('an entry for a length', () => {
  it('holds millimetres', () => {
    expect(drawn()).toContain('value="130"');
    expect(typedUnit()).toBe('mm');
  });

  it('shows inches to who reads inches', () => {
    unitsChoice.write('inches');
    expect(drawn()).toContain('value="5.12"');
    expect(drawn()).toContain('for example 5.12');
    expect(typedUnit()).toBe('in');
  });

  it('of a stand takes a unit that is typed along', () => {
    expect(readLengthMm('71 in', '')).toEqual({ ok: true, mm: 1803 });
    expect(readLengthMm('5.9 ft', '')).toEqual({ ok: true, mm: 1798 });
  });
});

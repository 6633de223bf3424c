import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { interpreterOf } from '../../../web/src/languages/interpreter.ts';
import { spokenChildren } from '../../../web/src/languages/spoken-children.ts';

const say = interpreterOf({
  'Press {0} to go on.': 'Zum Weitergehen {0} drücken.',
  'Keep {0} of {1}.': 'Von {1} bleiben {0}.',
});

const marked = (children: ReactNode) => renderToStaticMarkup(<p>{spokenChildren(children, say)}</p>);

describe('the words among children', () => {
  it('move an element to where the sentence wants it', () =>
    expect(marked(['Press ', <b key="b">Keep</b>, ' to go on.'])).toBe(
      '<p>Zum Weitergehen <b>Keep</b> drücken.</p>',
    ));

  it('are one text with the numbers between them', () =>
    expect(marked(['Keep ', 3, ' of ', 10, '.'])).toBe('<p>Von 10 bleiben 3.</p>'));

  it('do without what is not there', () =>
    expect(marked([false, 'Press ', null, ' to go on.'])).toContain('drücken'));

  it('stay as they are when nobody knows them', () => {
    const children = ['Bella ', <b key="b">12</b>];
    expect(spokenChildren(children, say)).toBe(children);
  });
});

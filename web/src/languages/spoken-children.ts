import { createElement, Fragment, type ReactNode } from 'react';
import type { Interpreter } from './interpreter.ts';

/** Stands in a text for an element among its words; of the private use area, where no text of ours or of the grower's has a letter. */
const FIRST_MARK = 0xe000;
const MARK = /([\ue000-\uf8ff])/;

/**
 * The children of one element with their words as `say` gives them: words and numbers side by side are one text, an element between them is
 * a value of it.
 *
 * @param children as React takes them
 * @returns the same elements, in the order that the words ask for; children without words come back as they are
 *
 * Example: `Press <b>Keep</b> to go on.` is said as "Press ⟨b⟩ to go on.", and the translation may put ⟨b⟩ elsewhere.
 */
export function spokenChildren(children: ReactNode, say: Interpreter): ReactNode {
  if (typeof children === 'string') return say(children);
  if (!Array.isArray(children) || !children.some((child) => typeof child === 'string')) return children;
  const text = children.map(wordsOrMark).join('');
  const said = say(text);
  if (said === text) return children;
  return said
    .split(MARK)
    .filter((piece) => piece !== '')
    .map((piece) => {
      if (!MARK.test(piece)) return piece;
      const place = piece.charCodeAt(0) - FIRST_MARK;
      // Keyed by its place in the source: a child that comes or goes beside it must not make it anew.
      return createElement(Fragment, { key: place }, children[place] as ReactNode);
    });
}

function wordsOrMark(child: ReactNode, place: number): string {
  if (child === null || child === undefined || typeof child === 'boolean') return '';
  return typeof child === 'string' || typeof child === 'number'
    ? String(child)
    : String.fromCharCode(FIRST_MARK + place);
}
